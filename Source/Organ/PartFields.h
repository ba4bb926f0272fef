// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Part.h"
#include "Organ/FieldReader.h"
#include "Organ/JsonTree.h"

namespace stopwright
{

// One part of a card's network. For the .cpp files of this folder only. Threading: [control].

/// Reads a part: its kind decides how many nodes and which numbers it has. Fails: DocumentError that names the part.
Part readPart (FieldReader& fields);

/// The part as a JSON object; numbers that are not there (no leak, no self-capacitance) are left out.
JsonTree partTree (const Part& part);

} // namespace stopwright

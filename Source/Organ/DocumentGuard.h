// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"

#include <string_view>

namespace stopwright
{

// Whether a document can hold what an edit makes: names, values in their ranges, counts of leads. The judge is the reader of
// documents itself. For the .cpp files of this folder only. Threading: [control].
// Fails: Error with the sentence the reader would refuse it with.

void requireHeld (const Part& part);
void requireHeld (const Tap& tap);

/// A name of a node, a part or a tap.
void requireName (std::string_view name);

} // namespace stopwright

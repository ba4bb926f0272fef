// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/DocumentFields.h"
#include "Organ/Instrument.h"

namespace stopwright
{

// Keyboards and the couplers between them. For the .cpp files of this folder only. Threading: [control].
// Each is read after those before it in `instrument`. Fails: DocumentError.

Division readDivision (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& unknown);
JsonTree divisionTree (const Division& division, UnknownFieldSource& unknown);

Coupler readCoupler (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& unknown);
JsonTree couplerTree (const Coupler& coupler, UnknownFieldSource& unknown);

} // namespace stopwright

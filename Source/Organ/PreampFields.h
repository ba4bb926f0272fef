// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/DocumentFields.h"
#include "Organ/Instrument.h"

namespace stopwright
{

// Preamps and their stages. For the .cpp files of this folder only. Threading: [control]. Fails: DocumentError.

/// Read once the mixing buses and the outlets have been.
Preamp readPreamp (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& unknown);
JsonTree preampTree (const Preamp& preamp, UnknownFieldSource& unknown);

} // namespace stopwright

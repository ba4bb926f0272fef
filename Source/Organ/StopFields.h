// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/DocumentFields.h"
#include "Organ/Instrument.h"

namespace stopwright
{

// The stop rail. For the .cpp files of this folder only. Threading: [control]. Fails: DocumentError.

/// Read once divisions, mixing buses and couplers have been.
StopTablet readStop (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& unknown);
JsonTree stopTree (const StopTablet& stop, UnknownFieldSource& unknown);

inline constexpr ValueRange mixingRange { "mixing resistance", Quantity::resistance, 1e-3, 1e12 };

/// The field whenRetired.
WhenRetired readRetired (FieldReader& fields, WhenRetired fallback);
std::string_view retiredWord (WhenRetired whenRetired) noexcept;

} // namespace stopwright

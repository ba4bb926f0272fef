// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/ValueLimits.h"
#include "Organ/Instrument.h"

#include <string_view>

namespace stopwright
{

/// What a tremulant can be set to. Own choice, no source: wider than any tremulant.
struct TremulantLimits
{
    static constexpr ValueRange rate { "rate of the tremulant", Quantity::frequency, 0.1, 20.0 };
    static constexpr ValueRange depth { "depth of the tremulant", Quantity::number, 0.0, 0.95 };
};

/// The tremulant of that outlet, nullptr where there is no such outlet or it is of another kind. Threading: [any].
const TremulantSettings* findTremulant (const Instrument& instrument, std::string_view outlet) noexcept;

/// Sets rate and depth. They are adjustments like the stand of a potentiometer, not alterations: what was found is not
/// noted. Threading: [control]. Fails: Error on an outlet that is none or has no tremulant, and on numbers out of range.
Instrument setTremulant (Instrument instrument, std::string_view outlet, const TremulantSettings& settings);

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace stopwright
{

/// How a scope is set. Volts and seconds of one division.
struct ScopeSetting
{
    static constexpr int divisionsAcross = 10;
    static constexpr int divisionsUp = 8;

    double voltsPerDivision = 1.0;
    double secondsPerDivision = 1e-3;

    bool operator== (const ScopeSetting&) const = default;
};

/// The smallest of 1, 2, 5 times a power of ten that is `least` or more. Range: least > 0, finite. Threading: [any].
double scopeStep (double least) noexcept;

/// All such steps from `lowest` to `highest`, ascending. Threading: [control].
std::vector<double> scopeSteps (double lowest, double highest);

/// What shows a wave whole: its larger peak within the divisions of its half, and two periods of `baseHz` at least.
/// Volts of 0 are shown at 1 V a division, and 0 Hz (nothing sounds) at 1 ms. Range: both 0 or more. Threading: [any].
ScopeSetting automaticSetting (double peakVolts, double baseHz) noexcept;

} // namespace stopwright

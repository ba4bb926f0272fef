// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ScopeSetting.h"

#include <cmath>

namespace stopwright
{

namespace
{

/// 1, 2, 5 times `decade`-th power of ten; a division keeps negative powers as near as a literal would be.
double stepOf (int digit, int decade) noexcept
{
    return decade < 0 ? digit / std::pow (10.0, -decade) : digit * std::pow (10.0, decade);
}

} // namespace

double scopeStep (double least) noexcept
{
    constexpr double rounding = 1.0 - 1e-9;
    const int decade = static_cast<int> (std::floor (std::log10 (least * rounding)));
    for (const int digit : { 1, 2, 5 })
        if (stepOf (digit, decade) >= least * rounding)
            return stepOf (digit, decade);
    return stepOf (1, decade + 1);
}

std::vector<double> scopeSteps (double lowest, double highest)
{
    constexpr double beyond = 1.0 + 1e-6;
    std::vector<double> steps;
    for (double step = scopeStep (lowest); step <= highest * beyond; step = scopeStep (step * beyond))
        steps.push_back (step);
    return steps;
}

ScopeSetting automaticSetting (double peakVolts, double baseHz) noexcept
{
    constexpr double periods = 2.0;
    constexpr double filled = 0.9; ///< of the half above or below the middle
    ScopeSetting setting;
    if (peakVolts > 0.0)
        setting.voltsPerDivision = scopeStep (peakVolts / (0.5 * ScopeSetting::divisionsUp * filled));
    if (baseHz > 0.0)
        setting.secondsPerDivision = scopeStep (periods / baseHz / ScopeSetting::divisionsAcross);
    return setting;
}

} // namespace stopwright

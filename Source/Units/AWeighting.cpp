// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/AWeighting.h"

#include <cmath>

namespace stopwright
{

namespace
{

/// Without the normalisation. f1 .. f4 of the standard.
double unscaled (double frequencyHz) noexcept
{
    constexpr double f1 = 20.598997;
    constexpr double f2 = 107.65265;
    constexpr double f3 = 737.86223;
    constexpr double f4 = 12194.217;
    const double f = frequencyHz * frequencyHz;
    return f4 * f4 * f * f / ((f + f1 * f1) * std::sqrt ((f + f2 * f2) * (f + f3 * f3)) * (f + f4 * f4));
}

} // namespace

double aWeighting (double frequencyHz) noexcept
{
    return unscaled (frequencyHz) / unscaled (1000.0);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/PotentiometerTrack.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr double leastEndOhms = 1e-3;
constexpr double leastEndFraction = 1e-6;

/// With (b^p - 1)/(b - 1) the fraction at half turn is 1/(sqrt (b) + 1), so b = 81 gives the 10 % taper.
constexpr double logTaperBase = 81.0;

} // namespace

double taperFraction (double position, Taper taper) noexcept
{
    const double turned = std::clamp (position, 0.0, 1.0);
    if (taper == Taper::linear)
        return turned;
    return (std::pow (logTaperBase, turned) - 1.0) / (logTaperBase - 1.0);
}

PotentiometerTrack potentiometerOhms (const Potentiometer& potentiometer) noexcept
{
    const double leastOhms = std::max (leastEndOhms, leastEndFraction * potentiometer.ohms);
    const double fraction = taperFraction (potentiometer.position, potentiometer.taper);
    return { std::max ((1.0 - fraction) * potentiometer.ohms, leastOhms),
             std::max (fraction * potentiometer.ohms, leastOhms) };
}

} // namespace stopwright

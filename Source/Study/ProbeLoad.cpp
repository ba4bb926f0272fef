// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ProbeLoad.h"

#include <cmath>
#include <numbers>

namespace stopwright
{

std::complex<double> ProbeLoad::siemens (double frequencyHz) const noexcept
{
    return { 1.0 / ohms, 2.0 * std::numbers::pi * frequencyHz * farads };
}

std::complex<double> ProbeLoad::ratio (std::complex<double> nodeOhms, double frequencyHz) const noexcept
{
    return 1.0 / (1.0 + nodeOhms * siemens (frequencyHz));
}

std::optional<double> cornerOf (const ProbeLoad& load,
                                const std::function<std::complex<double> (double frequencyHz)>& nodeOhms)
{
    constexpr double lowestHz = 20.0;
    constexpr double highestHz = 10e6;
    constexpr double step = 1.0293022366434921; // a 24th of an octave
    constexpr int halvings = 40;
    const double wanted = std::abs (load.ratio (nodeOhms (lowestHz), lowestHz)) / std::numbers::sqrt2;
    const auto isBelow = [&] (double hz) { return std::abs (load.ratio (nodeOhms (hz), hz)) < wanted; };
    for (double hz = lowestHz; hz < highestHz; hz *= step)
    {
        if (! isBelow (hz * step))
            continue;
        double lower = hz;
        double upper = hz * step;
        for (int halving = 0; halving < halvings; ++halving)
        {
            const double middle = std::sqrt (lower * upper);
            (isBelow (middle) ? upper : lower) = middle;
        }
        return lower;
    }
    return {};
}

} // namespace stopwright

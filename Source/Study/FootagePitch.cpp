// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/FootagePitch.h"

#include <cmath>

namespace stopwright
{

double pitchRatio (double generatorHz, double keyHz, const Footage& footage) noexcept
{
    const double measured = generatorHz / keyHz;
    const double octaves = std::round (std::log2 (measured / footage.harmonicOfEightFoot()));
    const double exact = std::ldexp (footage.harmonicOfEightFoot(), static_cast<int> (octaves));
    return std::abs (measured - exact) <= samePitchTolerance * exact ? exact : measured;
}

double unisonRatio (const Tuning& tuning, int key, const Footage& footage) noexcept
{
    const double exact = footage.harmonicOfEightFoot();
    const auto generator = tuning.generatorFor (key, footage);
    if (! generator)
        return exact;
    const double ratio = pitchRatio (tuning.frequencyHz (*generator), tuning.keyHz (key), footage);
    return std::ldexp (ratio, static_cast<int> (std::round (std::log2 (exact / ratio))));
}

std::optional<int> wholeMultiple (double value) noexcept
{
    constexpr double most = 1e6;
    if (! (value < most))
        return {};
    const double whole = std::round (value);
    if (whole < 1.0 || std::abs (value - whole) > samePitchTolerance * whole)
        return {};
    return static_cast<int> (whole);
}

} // namespace stopwright

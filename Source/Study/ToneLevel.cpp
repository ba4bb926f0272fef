// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ToneLevel.h"

#include "Study/FootagePitch.h"
#include "Units/AWeighting.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

double ToneLevel::dbv() const noexcept
{
    return toDecibels (rmsVolts);
}

double ToneLevel::dbva() const noexcept
{
    return toDecibels (aWeightedVolts);
}

ToneLevel toneLevelOf (std::span<const RailPartial> partials) noexcept
{
    ToneLevel level;
    double power = 0.0;
    double weightedPower = 0.0;
    double amplitudes = 0.0;
    double moment = 0.0;
    for (const RailPartial& partial : partials)
    {
        const double peak = std::abs (partial.volts);
        const double weight = aWeighting (partial.frequencyHz);
        power += 0.5 * peak * peak;
        weightedPower += 0.5 * weight * weight * peak * peak;
        amplitudes += peak;
        moment += peak * partial.frequencyHz;
        if (peak > level.strongestPeakVolts)
        {
            level.strongestPeakVolts = peak;
            level.strongestHarmonic = partial.harmonic;
            level.strongestHz = partial.frequencyHz;
        }
    }
    level.rmsVolts = std::sqrt (power);
    level.aWeightedVolts = std::sqrt (weightedPower);
    level.centroidHz = amplitudes > 0.0 ? moment / amplitudes : 0.0;
    return level;
}

std::vector<RailPartial> addTones (std::span<const std::vector<RailPartial>> tones)
{
    std::vector<RailPartial> all;
    for (const auto& tone : tones)
        all.insert (all.end(), tone.begin(), tone.end());
    std::ranges::stable_sort (all, {}, &RailPartial::frequencyHz);

    std::vector<RailPartial> sum;
    for (const RailPartial& partial : all)
    {
        if (sum.empty() || partial.frequencyHz > sum.back().frequencyHz * (1.0 + samePitchTolerance))
        {
            sum.push_back (partial);
            continue;
        }
        sum.back().source += partial.source;
        sum.back().volts += partial.volts;
    }
    return sum;
}

} // namespace stopwright

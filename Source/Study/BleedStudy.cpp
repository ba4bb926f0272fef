// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BleedStudy.h"

#include "Study/TapPartials.h"
#include "Study/ToneLevel.h"
#include "Units/Decibels.h"

#include <cmath>
#include <limits>
#include <numbers>
#include <span>
#include <vector>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

/// One key's partials at the place; of a played key when strayFarads is infinite.
std::vector<RailPartial> partialsOf (const BenchPoint& point, int key, double strayFarads)
{
    const auto ofTaps = tapPartials (point.card(), point.keySource(), key);
    std::vector<RailPartial> partials;
    for (std::span<const TapPartial> left (ofTaps); ! left.empty();)
    {
        const auto count = samePitchCount (left);
        const double hz = left.front().frequencyHz;
        RailPartial partial { left.front().harmonic, hz, 0.0, 0.0 };
        for (const TapPartial& tap : left.first (count))
        {
            const double ohms = point.card().taps[tap.tap].sourceOhms;
            const Complex stray { 0.0, 2.0 * std::numbers::pi * hz * strayFarads * ohms };
            const Complex part = std::isinf (strayFarads) ? Complex (1.0) : stray / (1.0 + stray);
            partial.source += tap.volts;
            partial.volts += part * tap.volts * point.at (hz).tapGains[tap.tap];
        }
        partials.push_back (partial);
        left = left.subspan (count);
    }
    return partials;
}

double fundamentalPower (const std::vector<RailPartial>& partials)
{
    return partials.empty() ? 0.0 : std::norm (partials.front().volts);
}

} // namespace

BleedLevels bleedLevels (const BenchPoint& point, int playedKey, double strayFarads)
{
    const auto played = partialsOf (point, playedKey, std::numeric_limits<double>::infinity());
    std::vector<std::vector<RailPartial>> idle;
    double power = 0.0;
    for (int key = point.keySource().lowestKey; key <= point.keySource().highestKey; ++key)
    {
        if (key == playedKey)
            continue;
        idle.push_back (partialsOf (point, key, strayFarads));
        power += fundamentalPower (idle.back());
    }
    const auto together = toneLevelOf (addTones (idle));
    const auto one = toneLevelOf (played);
    return { together.dbv() - one.dbv(), together.dbva() - one.dbva(),
             toDecibels (std::sqrt (power / fundamentalPower (played))) };
}

} // namespace stopwright

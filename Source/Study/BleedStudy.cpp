// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BleedStudy.h"

#include "Study/RailPartial.h"
#include "Study/ToneLevel.h"
#include "Units/Decibels.h"

#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

/// One key's partials at the place; of a played key when strayFarads is infinite.
std::vector<RailPartial> partialsOf (const BenchPoint& point, int key, double strayFarads)
{
    const auto& taps = point.card().taps;
    const auto gainsOf = [&] (double frequencyHz)
    {
        auto gains = point.at (frequencyHz).tapGains;
        for (std::size_t tap = 0; std::isfinite (strayFarads) && tap < gains.size(); ++tap)
        {
            const Complex stray { 0.0, 2.0 * std::numbers::pi * frequencyHz * strayFarads * taps[tap].sourceOhms };
            gains[tap] *= stray / (1.0 + stray);
        }
        return gains;
    };
    return throughGains (tapPartials (point.card(), point.keySource(), key), 1.0, gainsOf);
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

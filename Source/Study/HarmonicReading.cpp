// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/HarmonicReading.h"

#include "Study/FootagePitch.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stopwright
{

namespace
{

/// dB re the strongest: what is left below when amplitudes that cancel are added in double.
constexpr double noneBelowDb = -200.0;

double levelDb (double volts, double strongest)
{
    const double level = toDecibels (strongest > 0.0 ? volts / strongest : 0.0);
    return level < noneBelowDb ? -std::numeric_limits<double>::infinity() : level;
}

MaskedTone toneOf (const BenchPoint& point, const HarmonicReading& reading, const Footage& unison)
{
    MaskedTone tone { reading.key, unisonRatio (point.keySource().tuning, reading.key, unison), reading.keyHz, {} };
    tone.partials.reserve (reading.bars.size());
    for (const auto& bar : reading.bars)
        tone.partials.push_back ({ bar.harmonic, bar.frequencyHz, bar.resultPeakVolts });
    return tone;
}

} // namespace

HarmonicReading harmonicReading (const BenchPoint& point, int key, const TargetMask* mask)
{
    HarmonicReading reading;
    reading.key = key;
    reading.keyHz = point.keySource().tuning.keyHz (key);
    const auto partials = throughGains (
        tapPartials (point.card(), point.keySource(), key),
        point.polarity(), [&](double frequencyHz) -> const auto& { return point.at (frequencyHz).tapGains; });

    double strongestSource = 0.0;
    double strongestResult = 0.0;
    for (std::size_t index = 0; index < partials.size(); ++index)
    {
        strongestSource = std::max (strongestSource, std::abs (partials[index].source));
        if (std::abs (partials[index].volts) <= strongestResult)
            continue;
        strongestResult = std::abs (partials[index].volts);
        reading.strongest = static_cast<int> (index);
    }
    reading.bars.reserve (partials.size());
    for (const auto& partial : partials)
    {
        const double source = std::abs (partial.source);
        const double result = std::abs (partial.volts);
        const double sourceDb = levelDb (source, strongestSource);
        reading.bars.push_back ({ partial.harmonic, partial.frequencyHz, sourceDb, levelDb (result, strongestResult),
                                  source, result, ! (sourceDb > absentBelowDb) });
    }
    if (strongestSource > 0.0)
        reading.lossDb = toDecibels (strongestResult / strongestSource);
    if (mask != nullptr && reading.strongest >= 0)
        reading.mask = maskReading (*mask, toneOf (point, reading, mask->unison));
    return reading;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ResponseReading.h"

#include "Study/HarmonicReading.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

ResponseRow rowOf (const BenchPoint& point, std::size_t tap, double frequencyHz)
{
    constexpr double degreesPerRadian = 180.0 / std::numbers::pi;
    const auto gain = static_cast<double> (point.polarity()) * point.at (frequencyHz).tapGains[tap];
    return { frequencyHz, toDecibels (std::abs (gain)), std::arg (gain) * degreesPerRadian };
}

} // namespace

ResponseReading responseReading (const BenchPoint& point, int key, int points)
{
    ResponseReading reading;
    reading.key = key;
    reading.keyHz = point.keySource().tuning.keyHz (key);
    const double octaves = std::log2 (ResponseReading::highestHz / ResponseReading::lowestHz);
    const auto partials = tapPartials (point.card(), point.keySource(), key, ResponseReading::highestHz);
    for (std::size_t tap = 0; tap < point.card().taps.size(); ++tap)
    {
        ResponseReading::Curve curve { point.card().taps[tap].name, {}, {} };
        curve.rows.reserve (static_cast<std::size_t> (points));
        for (int place = 0; place < points; ++place)
            curve.rows.push_back (
                rowOf (point, tap, ResponseReading::lowestHz * std::exp2 (octaves * place / (points - 1))));

        double strongest = 0.0;
        for (const auto& partial : partials)
            if (partial.tap == tap)
                strongest = std::max (strongest, std::abs (partial.volts));
        for (const auto& partial : partials)
            if (partial.tap == tap && partial.frequencyHz >= ResponseReading::lowestHz)
                curve.partials.push_back ({ partial.harmonic, rowOf (point, tap, partial.frequencyHz),
                                            std::abs (partial.volts) > strongest * fromDecibels (absentBelowDb) });
        reading.curves.push_back (std::move (curve));
    }
    return reading;
}

} // namespace stopwright

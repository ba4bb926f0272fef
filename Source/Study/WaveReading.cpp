// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/WaveReading.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

/// Where a time lies in one period, in steps of it: 0 .. count.
double placeIn (const std::vector<double>& wave, double periods) noexcept
{
    return (periods - std::floor (periods)) * static_cast<double> (wave.size());
}

double valueAt (const std::vector<double>& wave, double periods) noexcept
{
    const double place = placeIn (wave, periods);
    const auto before = std::min (static_cast<std::size_t> (place), wave.size() - 1);
    const double part = place - static_cast<double> (before);
    return (1.0 - part) * wave[before] + part * wave[(before + 1) % wave.size()];
}

} // namespace

double WaveReading::at (double seconds) const noexcept
{
    double volts = 0.0;
    for (std::size_t index = 0; index < wave.waves.size(); ++index)
        volts += valueAt (wave.waves[index], seconds * wave.baseHz[index]);
    return volts;
}

WaveReading::Span WaveReading::between (double fromSeconds, double toSeconds) const noexcept
{
    constexpr double mostPoints = 1024.0; // a stretch of many periods: one of them tells both
    double step = toSeconds - fromSeconds;
    for (std::size_t index = 0; index < wave.waves.size(); ++index)
        step = std::min (step, 1.0 / (wave.baseHz[index] * static_cast<double> (wave.waves[index].size())));
    step = std::max (step, (toSeconds - fromSeconds) / mostPoints);
    Span span { at (fromSeconds), at (fromSeconds) };
    const auto take = [&span] (double volts)
    {
        span.lowest = std::min (span.lowest, volts);
        span.highest = std::max (span.highest, volts);
    };
    take (at (toSeconds));
    if (step > 0.0)
        for (double seconds = std::ceil (fromSeconds / step) * step; seconds < toSeconds; seconds += step)
            take (at (seconds));
    return span;
}

ScopeSetting WaveReading::automatic() const noexcept
{
    const double baseHz = wave.baseHz.empty() ? keyHz : *std::ranges::min_element (wave.baseHz);
    return automaticSetting (std::max (meters.highestVolts, -meters.lowestVolts), baseHz);
}

WaveReading waveReading (const BenchPoint& point, int key)
{
    WaveReading reading { key, point.keySource().tuning.keyHz (key), benchWave (point, key), {} };
    if (! reading.isSilent())
        reading.meters = meterReadings (reading.wave.waves);
    return reading;
}

} // namespace stopwright

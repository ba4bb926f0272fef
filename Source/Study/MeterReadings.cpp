// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/MeterReadings.h"

#include "Study/AmplitudeDistribution.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

double meanMagnitude (std::span<const std::vector<double>> waves)
{
    if (waves.size() != 1)
        return AmplitudeDistribution (waves).meanMagnitude();
    double sum = 0.0;
    for (const double volts : waves.front())
        sum += std::abs (volts);
    return sum / static_cast<double> (waves.front().size());
}

} // namespace

double MeterReadings::crestDb() const noexcept
{
    return toDecibels (std::max (highestVolts, -lowestVolts) / rmsVolts);
}

double MeterReadings::averageErrorDb() const noexcept
{
    return toDecibels (averageVolts / rmsVolts);
}

MeterReadings meterReadings (std::span<const std::vector<double>> waves)
{
    MeterReadings readings;
    double power = 0.0;
    for (const auto& wave : waves)
    {
        const auto [least, most] = std::ranges::minmax (wave);
        readings.lowestVolts += least;
        readings.highestVolts += most;
        double squares = 0.0;
        for (const double volts : wave)
            squares += volts * volts;
        power += squares / static_cast<double> (wave.size());
    }
    readings.rmsVolts = std::sqrt (power);
    readings.averageVolts = std::numbers::pi / (2.0 * std::numbers::sqrt2) * meanMagnitude (waves);
    return readings;
}

} // namespace stopwright

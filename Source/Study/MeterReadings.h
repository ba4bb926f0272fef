// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

namespace stopwright
{

/// What instruments show of a wave without a mean, none of them limited in bandwidth. Volts.
struct MeterReadings
{
    double lowestVolts = 0.0;
    double highestVolts = 0.0;
    double rmsVolts = 0.0;     ///< a true-rms meter
    double averageVolts = 0.0; ///< a meter that averages magnitudes and is calibrated for sines

    double peakToPeakVolts() const noexcept { return highestVolts - lowestVolts; }

    double crestDb() const noexcept;        ///< the larger peak over the rms
    double averageErrorDb() const noexcept; ///< the averaging meter over the true-rms meter
};

/// Each wave is one period in equal steps of time; several are independent of each other.
///
/// averageVolts = pi / (2 sqrt 2) mean |v|: right for a sine, 0.912 dB high for a square.
/// Threading: [control]. Source: closed form of the mean of a rectified sine.
MeterReadings meterReadings (std::span<const std::vector<double>> waves);

} // namespace stopwright

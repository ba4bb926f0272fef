// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/LevelMeter.h"

#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stopwright
{

LevelMeter::LevelMeter (double rateHz) : forget_ (-std::expm1 (-1.0 / (windowSeconds * rateHz))) {}

void LevelMeter::process (std::span<const float> samples) noexcept
{
    for (const float sample : samples)
    {
        const double value = std::abs (static_cast<double> (sample));
        peak_ = std::max (peak_, value);
        meanSquare_ += forget_ * (value * value - meanSquare_);
    }
}

double LevelMeter::rmsDb() const noexcept
{
    return std::max (lowestDb, toDecibels (std::sqrt (meanSquare_)));
}

double LevelMeter::takePeak() noexcept
{
    return std::exchange (peak_, 0.0);
}

} // namespace stopwright

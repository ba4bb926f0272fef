// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/LoudnessCeiling.h"

#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr double windowSeconds = 0.4;
constexpr double fallDbPerSecond = 20.0;
constexpr double riseDbPerSecond = 3.0;

// What is beyond this is the peak limiter's business: a single spike must not hold the gain down for a minute.
constexpr double loudestCounted = 1000.0;

} // namespace

LoudnessCeiling::LoudnessCeiling (double rateHz)
    : forget_ (-std::expm1 (-1.0 / (windowSeconds * rateHz))),
      fall_ (fromDecibels (-fallDbPerSecond / rateHz)),
      rise_ (fromDecibels (riseDbPerSecond / rateHz)),
      ceilingSquare_ (std::pow (10.0, ceilingDb / 10.0))
{}

double LoudnessCeiling::gainFor (double sample) noexcept
{
    const double counted = std::min (std::abs (sample), loudestCounted);
    meanSquare_ += forget_ * (counted * counted - meanSquare_);

    const bool isTooLoud = meanSquare_ * gain_ * gain_ > ceilingSquare_;
    gain_ = isTooLoud ? gain_ * fall_ : std::min (1.0, gain_ * rise_);
    return gain_;
}

void LoudnessCeiling::reset() noexcept
{
    meanSquare_ = 0.0;
    gain_ = 1.0;
}

} // namespace stopwright

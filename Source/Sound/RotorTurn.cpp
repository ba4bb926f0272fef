// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RotorTurn.h"

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double secondsPerMinute = 60.0;

/// 1 - exp (-h / T), T = seconds / ln 10: exact for a target that stands still.
double shareOfWay (double seconds, double rateHz)
{
    return seconds > 0.0 ? -std::expm1 (-std::numbers::ln10 / (seconds * rateHz)) : 1.0;
}

} // namespace

RotorTurn::RotorTurn (const RotorSettings& settings, bool isFast, double rateHz)
    : seconds_ (1.0 / rateHz),
      slow_ (settings.slowRpm / secondsPerMinute),
      fast_ (settings.fastRpm / secondsPerMinute),
      riseShare_ (shareOfWay (settings.riseSeconds, rateHz)),
      fallShare_ (shareOfWay (settings.fallSeconds, rateHz)),
      isFast_ (isFast),
      speed_ (target())
{}

void RotorTurn::advance() noexcept
{
    const double way = target() - speed_;
    speed_ += way * (way > 0.0 ? riseShare_ : fallShare_);
    turns_ += speed_ * seconds_;
    turns_ -= std::floor (turns_);
}

void RotorTurn::reset() noexcept
{
    turns_ = 0.0;
    speed_ = target();
}

void RotorTurn::copyStateFrom (const RotorTurn& other) noexcept
{
    isFast_ = other.isFast_;
    speed_ = other.speed_;
    turns_ = other.turns_;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/SwellShoe.h"

#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr double lowestFloorDb = -200.0;

} // namespace

SwellShoe::SwellShoe (double floorDb, double deviceRateHz)
    : floorDb_ (std::isnan (floorDb) ? 0.0 : std::clamp (floorDb, lowestFloorDb, 0.0)),
      levelDb_ (0.0, rampSeconds, deviceRateHz)
{}

void SwellShoe::setPosition (double position) noexcept
{
    if (! std::isfinite (position))
        return;
    position_ = std::clamp (position, 0.0, 1.0);
    levelDb_.setTarget (floorDb_ * (1.0 - position_));
}

void SwellShoe::process (std::span<double> samples) noexcept
{
    for (double& sample : samples)
    {
        if (levelDb_.isMoving())
            gain_ = fromDecibels (levelDb_.next());
        sample *= gain_;
    }
}

void SwellShoe::finish() noexcept
{
    levelDb_.finish();
    gain_ = fromDecibels (levelDb_.value());
}

void SwellShoe::copyStateFrom (const SwellShoe& other) noexcept
{
    levelDb_ = other.levelDb_;
    gain_ = other.gain_;
    setPosition (other.position_);
}

} // namespace stopwright

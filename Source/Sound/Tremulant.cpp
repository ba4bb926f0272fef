// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Tremulant.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

double legalDepth (double depth) noexcept
{
    return std::clamp (depth, 0.0, Tremulant::greatestDepth);
}

double legalRateHz (double rateHz) noexcept
{
    return std::clamp (rateHz, 0.0, Tremulant::highestRateHz);
}

double orZero (double number) noexcept
{
    return std::isfinite (number) ? number : 0.0;
}

} // namespace

Tremulant::Tremulant (const TremulantSettings& settings, bool isOn, double deviceRateHz)
    : deviceRateHz_ (deviceRateHz),
      depthWhenOn_ (legalDepth (orZero (settings.depth))),
      isOn_ (isOn),
      rateHz_ (legalRateHz (orZero (settings.rateHz)), rampSeconds, deviceRateHz),
      depth_ (isOn ? depthWhenOn_ : 0.0, rampSeconds, deviceRateHz)
{}

void Tremulant::setTarget (const TremulantSettings& settings) noexcept
{
    rateHz_.setTarget (legalRateHz (settings.rateHz));
    if (std::isfinite (settings.depth))
        depthWhenOn_ = legalDepth (settings.depth);
    aim();
}

void Tremulant::setOn (bool isOn) noexcept
{
    isOn_ = isOn;
    aim();
}

void Tremulant::aim() noexcept
{
    depth_.setTarget (isOn_ ? depthWhenOn_ : 0.0);
}

void Tremulant::process (std::span<double> samples) noexcept
{
    for (double& sample : samples)
    {
        sample *= 1.0 + depth_.next() * std::sin (2.0 * std::numbers::pi * turns_);
        turns_ += rateHz_.next() / deviceRateHz_;
        turns_ -= turns_ >= 1.0 ? 1.0 : 0.0;
    }
}

void Tremulant::reset() noexcept
{
    turns_ = 0.0;
    rateHz_.finish();
    depth_.finish();
}

void Tremulant::copyStateFrom (const Tremulant& other) noexcept
{
    const double rateHz = rateHz_.target();
    turns_ = other.turns_;
    isOn_ = other.isOn_;
    rateHz_ = other.rateHz_;
    depth_ = other.depth_;
    rateHz_.setTarget (rateHz);
    aim();
}

} // namespace stopwright

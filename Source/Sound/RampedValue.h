// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>

namespace stopwright
{

/// A number that runs in a straight line to where it is sent, over a fixed time, and is asked for sample by sample.
/// Threading: construct on [control]; noexcept functions on [audio].
class RampedValue
{
public:
    RampedValue (double value, double rampSeconds, double rateHz)
        : value_ (value),
          target_ (value),
          rampSamples_ (std::max (1, static_cast<int> (std::round (rampSeconds * rateHz))))
    {}

    /// Not finite is ignored.
    void setTarget (double target) noexcept
    {
        if (target == target_ || ! std::isfinite (target))
            return;
        target_ = target;
        step_ = (target - value_) / rampSamples_;
        samplesLeft_ = rampSamples_;
    }

    /// One sample further.
    double next() noexcept
    {
        if (samplesLeft_ > 0)
            value_ = --samplesLeft_ == 0 ? target_ : value_ + step_;
        return value_;
    }

    double value() const noexcept { return value_; }

    double target() const noexcept { return target_; }

    bool isMoving() const noexcept { return samplesLeft_ > 0; }

    /// At its target at once.
    void finish() noexcept
    {
        value_ = target_;
        samplesLeft_ = 0;
    }

private:
    double value_;
    double target_;
    double step_ = 0.0;
    int rampSamples_;
    int samplesLeft_ = 0;
};

} // namespace stopwright

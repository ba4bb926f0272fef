// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/KnobRamp.h"

#include <cmath>

namespace stopwright
{

void KnobRamp::jumpTo (double value) noexcept
{
    value_ = value;
    target_ = value;
    stepsLeft_ = 0;
}

void KnobRamp::moveTo (double target, int stepCount, bool isLinear) noexcept
{
    target_ = target;
    stepsLeft_ = target == value_ ? 0 : stepCount;
    const bool hasLogarithm = value_ > 0.0 && target > 0.0 && ! isLinear;
    factor_ = hasLogarithm ? std::exp (std::log (target / value_) / stepCount) : 1.0;
    increment_ = hasLogarithm ? 0.0 : (target - value_) / stepCount;
}

void KnobRamp::advance() noexcept
{
    if (stepsLeft_ == 0)
        return;
    --stepsLeft_;
    value_ = stepsLeft_ == 0 ? target_ : value_ * factor_ + increment_;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/LevelEnds.h"

#include <algorithm>

namespace stopwright
{

/// A tablet on its way in or out: how far it is drawn, 0 .. 1, with level ends, in equal steps.
/// Threading: [audio].
class DrawRamp
{
public:
    /// `steps` from one end to the other.
    DrawRamp (bool isDrawn, int steps) noexcept
        : target_ (isDrawn ? 1.0 : 0.0),
          place_ (target_),
          step_ (1.0 / std::max (1, steps))
    {}

    void setDrawn (bool drawn) noexcept { target_ = drawn ? 1.0 : 0.0; }

    bool isDrawn() const noexcept { return target_ > 0.0; }

    bool isMoving() const noexcept { return place_ != target_; }

    /// Neither drawn nor on the way.
    bool isOut() const noexcept { return place_ == 0.0 && target_ == 0.0; }

    void advance() noexcept
    {
        place_ = place_ < target_ ? std::min (target_, place_ + step_) : std::max (target_, place_ - step_);
    }

    double value() const noexcept { return withLevelEnds (place_); }

private:
    double target_;
    double place_;
    double step_;
};

} // namespace stopwright

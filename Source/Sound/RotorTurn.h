// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Outlet.h"

namespace stopwright
{

/// How a rotor turns: its speed goes exponentially to the one asked for, n' = (target - n) / T with
/// T = riseSeconds / ln 10 on the way up and fallSeconds / ln 10 on the way down, so that 90 % of the way is done in
/// those times; its angle is the integral.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
/// Source: closed form (a motor that pulls in proportion to the slip); the times are common practice, no source
class RotorTurn
{
public:
    /// Turns at the speed asked for. Units/range: rateHz samples per second > 0; times of 0 or less jump.
    RotorTurn (const RotorSettings& settings, bool isFast, double rateHz);

    void setFast (bool isFast) noexcept { isFast_ = isFast; }

    /// One sample further.
    void advance() noexcept;

    /// 0 .. 1, 0 where the microphone is.
    double turns() const noexcept { return turns_; }

    double turnsPerSecond() const noexcept { return speed_; }

    /// Angle 0, at the speed asked for.
    void reset() noexcept;

    /// Goes on in the angle and from the speed of another, to the same of its own two speeds.
    void copyStateFrom (const RotorTurn& other) noexcept;

private:
    double target() const noexcept { return isFast_ ? fast_ : slow_; }

    double seconds_; ///< of a sample
    double slow_;    ///< turns per second
    double fast_;
    double riseShare_; ///< of the way, in one sample
    double fallShare_;
    bool isFast_;
    double speed_;
    double turns_ = 0.0;
};

} // namespace stopwright

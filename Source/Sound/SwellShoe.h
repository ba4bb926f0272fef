// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/RampedValue.h"

#include <span>

namespace stopwright
{

/// The swell shoe as a gain: floorDb (1 - position) in dB, so that equal ways of the foot are equal steps of level. Runs
/// to a new place in a straight line in dB over 30 ms.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class SwellShoe
{
public:
    static constexpr double rampSeconds = 0.03;

    /// Open. `floorDb` is the level with the shoe closed re open, <= 0; above 0 or not a number counts as 0, below -200
    /// as that.
    SwellShoe (double floorDb, double deviceRateHz);

    /// Units/range: 0 closed .. 1 open, clamped; what is not finite is ignored.
    void setPosition (double position) noexcept;

    /// In place, any length.
    void process (std::span<double> samples) noexcept;

    /// At its place at once.
    void finish() noexcept;

    /// Goes on from the level of another, to the same place in its own range.
    void copyStateFrom (const SwellShoe& other) noexcept;

private:
    double floorDb_;
    double position_ = 1.0;
    RampedValue levelDb_;
    double gain_ = 1.0; ///< of levelDb_ where it stands
};

} // namespace stopwright

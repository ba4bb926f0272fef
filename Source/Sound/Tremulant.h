// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Outlet.h"
#include "Sound/RampedValue.h"

#include <span>

namespace stopwright
{

/// Amplitude swings: gain 1 + depth sin (2 pi rateHz t), at the device's rate. Peak over trough is
/// 20 log10 ((1 + depth) / (1 - depth)) dB: 5.38 dB at depth 0.3.
///
/// Depth, rate and the switch run to new settings in a straight line over 50 ms, the phase goes on: nothing clicks.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class Tremulant
{
public:
    static constexpr double rampSeconds = 0.05;
    static constexpr double greatestDepth = 0.95;
    static constexpr double highestRateHz = 50.0;

    Tremulant (const TremulantSettings& settings, bool isOn, double deviceRateHz);

    /// Clamped to 0 .. greatestDepth and 0 .. highestRateHz; what is not finite is ignored.
    void setTarget (const TremulantSettings& settings) noexcept;

    void setOn (bool isOn) noexcept;

    /// In place, any length.
    void process (std::span<double> samples) noexcept;

    /// Phase 0, ramps at their ends.
    void reset() noexcept;

    /// Goes on in the phase and from the depth of another; the settings stay as they are and are run to.
    void copyStateFrom (const Tremulant& other) noexcept;

private:
    void aim() noexcept;

    double deviceRateHz_;
    double depthWhenOn_;
    bool isOn_;
    RampedValue rateHz_;
    RampedValue depth_;
    double turns_ = 0.0; ///< phase, 0 .. 1
};

} // namespace stopwright

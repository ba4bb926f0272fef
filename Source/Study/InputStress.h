// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/SupplyRails.h"

namespace stopwright
{

/// What drives an input pin: peak volts with the pin disconnected, and the resistance they come through.
struct InputDrive
{
    double peakVolts = 0.0;  ///< the larger of both directions, positive
    double sourceOhms = 0.0; ///< of the network before it, its mixing resistors in it
    double seriesOhms = 0.0; ///< a resistor in front of the pin
};

struct InputLimits
{
    double diodeVolts = 0.6; ///< one clamp diode's drop: common practice, no source
    double pinAmps = 1e-3;   ///< what a clamp diode is let carry for long: common practice, no source
    SupplyRails rails;       ///< with the supplies on, re the pin's resting point
};

/// What the clamp diodes of a pin carry at the peaks, with its supplies on and off (both rails at 0 V while the source is
/// live), and the resistor in front of the pin that limits it, the one that is there counted in; 0 when none is needed.
struct InputStress
{
    double ampsOn = 0.0;
    double ampsOff = 0.0;
    double seriesOhmsOn = 0.0;
    double seriesOhmsOff = 0.0;
};

/// I = (peak - rail - diode) / (source + series), the nearer rail; infinite when nothing limits it.
/// Threading: [any]. Source: Ohm's law; a clamp as a fixed drop is common practice, no source.
InputStress inputStress (const InputDrive& drive, const InputLimits& limits) noexcept;

} // namespace stopwright

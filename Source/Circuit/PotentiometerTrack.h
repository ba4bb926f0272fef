// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Part.h"

namespace stopwright
{

/// The two resistors a potentiometer is made of.
struct PotentiometerTrack
{
    double upperOhms = 0.0; ///< top to wiper
    double lowerOhms = 0.0; ///< wiper to bottom
};

/// Fraction 0..1 of the track that lies between bottom and wiper at a turned angle `position` (0..1).
///
/// linear: position. log: (81^position - 1) / 80, which is 0.1 at half turn and 1 at full turn.
/// Threading: [audio] no allocation, no lock. Source: audio taper of 10 % at half turn, common practice.
double taperFraction (double position, Taper taper) noexcept;

/// Splits the track at the wiper. Neither part is less than max (1 milliohm, 1e-6 of the track), a good wiper's end
/// resistance, so that a turned-down potentiometer stays a finite conductance.
/// Threading: [audio] no allocation, no lock. position outside 0..1 is clamped.
PotentiometerTrack potentiometerOhms (const Potentiometer& potentiometer) noexcept;

} // namespace stopwright

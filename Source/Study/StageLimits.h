// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Preamp.h"
#include "Organ/SupplyRails.h"

#include <limits>

namespace stopwright
{

/// Limits that nothing reaches.
inline constexpr SupplyRails noLimits { -std::numeric_limits<double>::infinity(),
                                        std::numeric_limits<double>::infinity() };

/// How far the output of a preamp stage swings, in volts re its resting point: its rails; of an emitter follower no
/// further down than its standing current does in what hangs on its emitter, emitterAmps (emitterOhms || loadOhms). A
/// circuit has no limits here. Threading: [any]. Source: the follower's bound is common practice, no source.
SupplyRails limitsOf (const PreampStage& stage) noexcept;

/// Room in dB between peaks and limits, the nearer one: negative when there is none, infinite without a limit or a wave.
/// Range: lowest <= 0 <= highest. Threading: [any].
double peakRoomDb (double lowestVolts, double highestVolts, SupplyRails limits) noexcept;

/// The follower's bound alone, positive volts. Threading: [any].
double sinkVolts (double emitterAmps, double emitterOhms, double loadOhms) noexcept;

} // namespace stopwright

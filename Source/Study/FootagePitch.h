// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/Tuning.h"

#include <optional>

namespace stopwright
{

/// Two pitches nearer than this, relative, are one: generators are rounded within 1e-12, and tempered ones that miss
/// each other do so by far more.
inline constexpr double samePitchTolerance = 1e-9;

/// Pitch of a generator re the key's 8 ft pitch. It is the footage's exact fraction, perhaps octaves lower where it
/// breaks back, when the generator is tuned to that; a borrowed mutation has only the measured ratio. Threading: [any].
double pitchRatio (double generatorHz, double keyHz, const Footage& footage) noexcept;

/// The ratio that a footage has on a key when nothing breaks back: 8 / feet, or what a borrowed mutation comes to where
/// it has a generator. Threading: [any].
double unisonRatio (const Tuning& tuning, int key, const Footage& footage) noexcept;

/// `value` as a whole number from 1 on, if it is one to within samePitchTolerance. Threading: [any].
std::optional<int> wholeMultiple (double value) noexcept;

} // namespace stopwright

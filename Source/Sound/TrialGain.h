// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/Engine.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

/// The factor of a trial's gain: brought into its range, 1 for what is not a number. Threading: [any].
inline double trialGain (double gainDb) noexcept
{
    return std::isnan (gainDb) ? 1.0 : fromDecibels (std::clamp (gainDb, Engine::lowestTrialGainDb, 0.0));
}

} // namespace stopwright

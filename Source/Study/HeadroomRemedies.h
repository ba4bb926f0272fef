// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/HeadroomStudy.h"

namespace stopwright
{

// What brings back room. Threading: [any]. Empty when the stage has marginDb or no limit.

/// The feedback resistance scaled.
std::vector<HeadroomRemedy> remediesFor (const StageHeadroom& found, const MixingBus& bus, double marginDb);

/// The gain scaled; a resistor in front of the input resistance Rin, Rin (1/s - 1) for a factor s, where the stage states
/// one (its coupling corner falls by the same factor); for a follower that cannot sink enough, its standing current.
std::vector<HeadroomRemedy> remediesFor (const StageHeadroom& found, const PreampStage& stage, double marginDb);

} // namespace stopwright

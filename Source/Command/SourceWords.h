// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/KeyedBus.h"
#include "Study/SourceStudy.h"

#include <string>

namespace stopwright
{

// How the command `source` speaks. Threading: [control].

/// Why a tap does not have a partial: one sentence without the full stop.
std::string reasonWords (const LackReason& reason, const Card& card);

/// How a keyed bus could supply it: one sentence without the full stop. `lowestDb` is the least that is within the
/// mask's tolerance.
std::string supplyWords (const PartialSupply& supply, const KeyedBus& bus, double lowestDb);

/// "absent", "at -44.1 dB", "above 20 kHz": how the tapped waves have it.
std::string stateWords (const WantedPartial& wanted);

} // namespace stopwright

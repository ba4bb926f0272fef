// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/LevelChange.h"
#include "Study/RailStudy.h"

#include <cstddef>
#include <vector>

namespace stopwright
{

/// What one other stop, drawn, feels of a stop that is added to the rail, against a rail that lacks it.
struct OtherStopChange
{
    std::size_t stop = 0;
    bool isOnTheSameBus = false; ///< otherwise nothing changes
    LevelChange whenDrawn;
    LevelChange whenRetiredOpen; ///< nothing either: the mixing resistor hangs free
    LevelChange whenRetiredGrounded;
};

/// The change of every other stop that has a card, in the instrument's order, each drawn with the rest of the rail as in
/// `state` and over the compass of its own division. Loading between stops is exact for linear networks; the keyed buses
/// are taken as stiff (see tapLoads). Threading: [control].
std::vector<OtherStopChange> changesByStop (const RailStudy& study, std::size_t added, const RailState& state);

/// Every key of a stop's division, rising. Threading: [control].
std::vector<int> compassOf (const RailStudy& study, std::size_t stop);

} // namespace stopwright

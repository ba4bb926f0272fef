// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"
#include "Circuit/SteppedNetwork.h"

#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// The names of a network's states, in order. Threading: [control].
std::vector<std::string> stateNamesOf (const StateSpaceBuilder& network);

/// For each state of `mine`, then for each of its sources: the quantity or source of the same name in `theirs`, or -1.
/// Threading: [control].
std::vector<int> adoptionMapOf (const StateSpaceBuilder& mine,
                                const std::vector<SourcePort>& mySources,
                                const StateSpaceBuilder& theirs,
                                const std::vector<SourcePort>& theirSources);

/// Takes over what the map found; the rest stays. Threading: [audio] no allocation, no lock.
void adoptStatesOf (const SteppedNetwork& theirs, std::span<const int> adoptionMap, SteppedNetwork& mine) noexcept;

} // namespace stopwright

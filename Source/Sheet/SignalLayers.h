// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/CardGraph.h"

#include <vector>

namespace stopwright
{

/// How far to the right each node of an island stands: 0 at the left, -1 for nodes that are not signal nodes of it.
/// Between the ends of every part there is at least one layer, and the outputs of amplifiers stand to the right of their
/// inputs unless two amplifiers feed each other.
///
/// The order comes from the potentials that a network of equal resistors along the parts would have with the taps at 0
/// and the output at 1, so that parallel paths advance alike; what carries no current follows by its distance from the
/// taps. Layers are then the longest way in that order. Threading: [control].
std::vector<int> signalLayers (const Card& card, const CardGraph& graph, const std::vector<int>& island);

} // namespace stopwright

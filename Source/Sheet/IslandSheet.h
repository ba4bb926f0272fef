// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/IslandWires.h"

#include <vector>

namespace stopwright
{

/// An island laid out for itself: blocks in their places, wires between them, and the outermost points of both.
struct IslandSheet
{
    std::vector<SheetBlock> blocks;
    IslandWires wires;
    GridPoint low;
    GridPoint high;
};

/// Lays out an island; its output, if it has one, stands at least `leastWidth` steps from its left edge. Blocks are spread
/// until all wires find a way. Threading: [control].
IslandSheet layOutIsland (const Card& card, const CardGraph& graph, const std::vector<int>& island, int leastWidth);

/// Elements without a signal node, side by side in lines of at most that width.
IslandSheet layOutLoose (const Card& card, const CardGraph& graph, int greatestWidth);

/// Moves everything.
void shift (IslandSheet& sheet, GridPoint by);

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/IslandWires.h"
#include "Sheet/LayoutEffort.h"

#include <optional>
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
/// until all wires find a way. Nothing when the effort was spent before. Threading: [control].
std::optional<IslandSheet> layOutIsland (const Card& card,
                                         const CardGraph& graph,
                                         const std::vector<int>& island,
                                         int leastWidth,
                                         LayoutEffort& effort);

/// Elements without a signal node, side by side in lines of at most that width.
IslandSheet
    layOutInLines (const Card& card, const CardGraph& graph, const std::vector<int>& elements, int greatestWidth);

/// Moves everything.
void shift (IslandSheet& sheet, GridPoint by);

} // namespace stopwright

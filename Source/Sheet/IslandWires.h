// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/BlockSpacing.h"
#include "Sheet/LayoutEffort.h"
#include "Sheet/WireShape.h"

#include <optional>
#include <vector>

namespace stopwright
{

/// The wires of one node of an island.
struct NodeWires
{
    int node = 0;
    WireShape shape;
};

struct IslandWires
{
    std::vector<NodeWires> wires; ///< the rail of common among them
    GridPoint railSign;           ///< where the rail's sign stands
    bool hasRail = false;
};

/// Lays the wires between the blocks of an island. Nothing when a wire found no way: spread the blocks and try again;
/// with `isLastTry`, what could be laid, unless the effort was spent. Threading: [control].
std::optional<IslandWires> layWires (const CardGraph& graph,
                                     const IslandBlocks& island,
                                     const BlockSpacing& spacing,
                                     bool isLastTry,
                                     LayoutEffort& effort);

} // namespace stopwright

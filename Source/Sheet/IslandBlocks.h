// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/RowPlan.h"
#include "Sheet/RowSearch.h"
#include "Sheet/SheetBlock.h"

#include <vector>

namespace stopwright
{

/// The blocks of an island in columns and rows. Nodes' uprights have columns too.
struct IslandBlocks
{
    std::vector<SheetBlock> blocks;
    std::vector<int> columnPlaces;   ///< the place of each column, see RowItem
    std::vector<int> uprightColumns; ///< per node of the graph, -1 for others'
    int rowCount = 0;
};

/// Threading: [control].
IslandBlocks islandBlocks (const Card& card, const CardGraph& graph, const std::vector<int>& island);

} // namespace stopwright

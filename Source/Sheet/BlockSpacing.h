// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/IslandBlocks.h"

#include <vector>

namespace stopwright
{

/// Where the columns and rows of an island lie, in steps, and the level of the rail of common.
struct BlockSpacing
{
    std::vector<int> columns;
    std::vector<int> rows;
    int rail = 0;
};

/// Sets every block's place: as close as rings, labels and signs allow, with room for a wire between; `spread` more steps
/// everywhere. Threading: [control].
BlockSpacing spaceBlocks (IslandBlocks& island, int spread);

} // namespace stopwright

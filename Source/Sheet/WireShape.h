// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/WireGrid.h"

#include <vector>

namespace stopwright
{

/// The wires of one net as they are drawn, on the grid.
struct WireShape
{
    std::vector<std::vector<GridPoint>> lines; ///< each from one end or junction to the next, corners between
    std::vector<GridPoint> dots;               ///< true junctions
};

/// Gathers the steps of a net. Threading: [control].
WireShape wireShape (const WireGrid& grid, int net);

} // namespace stopwright

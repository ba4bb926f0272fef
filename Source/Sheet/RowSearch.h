// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/RowCost.h"
#include "Sheet/RowPlan.h"

#include <vector>

namespace stopwright
{

/// The rows of an island: of its items, of its hangers, and which op-amps are flipped. Rows count downward from 0
/// without gaps.
struct RowLayout
{
    std::vector<int> itemRows;
    std::vector<int> hangerRows;
    std::vector<bool> isFlipped;
    int rowCount = 0;
};

/// Finds rows by local search from several starts: chains of items move as one, rows are inserted and closed, chains
/// change places. The same plan gives the same rows. Threading: [control].
RowLayout searchRows (const RowPlan& plan);

} // namespace stopwright

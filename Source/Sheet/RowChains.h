// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/RowPlan.h"

#include <vector>

namespace stopwright
{

/// Items that follow each other without a branch and so want to lie in one row: lists of indices into the plan's items.
/// Hangers do not count as branches. Threading: [control].
std::vector<std::vector<std::size_t>> chainsOf (const RowPlan& plan);

} // namespace stopwright

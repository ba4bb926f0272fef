// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/PaddedTable.h"

#include <span>

namespace stopwright
{

/// Gaussian elimination in place of `count` columns from `firstColumn` on, with pivots from the `count` rows from
/// `firstRow` on (scaled partial pivoting; rows are exchanged among themselves only).
struct Elimination
{
    int firstRow = 0;
    int firstColumn = 0;
    int count = 0;

    /// Clears the columns from every later row, down to the table's last: what is left there is the Schur complement.
    /// `scales` is workspace for `count` numbers. Returns false when a pivot drowns in rounding or is not finite.
    /// Threading: [audio] no allocation, no lock.
    bool forward (PaddedTable& table, std::span<double> scales) const noexcept;

    /// The same and clears them from the pivots' own rows, whose pivots become 1 (Gauss-Jordan): solves the system.
    bool complete (PaddedTable& table, std::span<double> scales) const noexcept;
};

} // namespace stopwright

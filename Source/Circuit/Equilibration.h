// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/NodalEquations.h"

namespace stopwright
{

/// Scales that bring every row and column of a matrix to a largest entry near 1, so that volts, amps, ohms and siemens
/// may stand in one matrix and a pivot can be called small.
/// Source: Ruiz, "A scaling algorithm to equilibrate both rows and columns norms in matrices", 2001.
struct Equilibration
{
    using Scales = Eigen::Matrix<Extended, Eigen::Dynamic, 1>;

    /// `matrix` becomes rows.asDiagonal() * matrix * columns.asDiagonal(). Threading: [control].
    explicit Equilibration (ExtendedComplexMatrix& matrix);

    Scales rows;
    Scales columns;
};

} // namespace stopwright

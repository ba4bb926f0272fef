// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NodalSolver.h"

#include "Circuit/NetlistSketch.h"
#include "Support/Tolerances.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (NodalSolver, EquilibrationBringsRowsAndColumnsToOneSize)
{
    ExtendedComplexMatrix matrix (3, 3);
    matrix << 1e-9L, 1.0L, 0.0L, 1.0L, 1e9L, 1e3L, 0.0L, 1e6L, 1e-3L;
    const ExtendedComplexMatrix original = matrix;
    const Equilibration scales (matrix);
    for (Eigen::Index index = 0; index < 3; ++index)
    {
        EXPECT_NEAR (static_cast<double> (std::log2 (matrix.row (index).cwiseAbs().maxCoeff())), 0.0, 1.1);
        EXPECT_NEAR (static_cast<double> (std::log2 (matrix.col (index).cwiseAbs().maxCoeff())), 0.0, 1.1);
    }
    EXPECT_EQ (matrix, scales.rows.asDiagonal() * original * scales.columns.asDiagonal());
}

TEST (NodalSolver, LeavesAResidualOfRounding)
{
    const NodalEquations equations (NetlistSketch()
                                        .tap ("in", "in")
                                        .resistor ("R1", "in", "t", 1e7)
                                        .resistor ("R2", "t", "u", 1.0)
                                        .capacitor ("C1", "u", "0", 1e-12)
                                        .inductor ("L1", "u", "0", 10.0, 1e3)
                                        .output ("u"));
    const ExtendedComplex s (0.0L, 2765.0L);
    const ExtendedComplexMatrix target = equations.excitation().cast<ExtendedComplex>();
    const auto solution = NodalSolver (equations, s).solve (target);
    const ExtendedComplexMatrix residual = equations.at (s) * solution - target;
    EXPECT_LT (static_cast<double> (residual.cwiseAbs().maxCoeff()), 1e-17);
}

TEST (NodalSolver, NoRightSideGivesNoSolution)
{
    const NodalEquations equations (NetlistSketch().resistor ("R1", "t", "0", 1e3).output ("t"));
    EXPECT_EQ (NodalSolver (equations, 1.0L).solve (ExtendedComplexMatrix (1, 0)).cols(), 0);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/Elimination.h"

#include "Support/Random.h"
#include "Support/Tolerances.h"

#include <Eigen/Dense>
#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

PaddedTable randomTable (int rows, int columns, Eigen::MatrixXd& copy, Random& random)
{
    PaddedTable table (rows, columns);
    copy.resize (rows, columns);
    for (int row = 0; row < rows; ++row)
        for (int column = 0; column < columns; ++column)
            table.row (row)[column] = copy (row, column) = random.uniform (-1.0, 1.0);
    return table;
}

} // namespace

TEST (Elimination, SolvesLikeAnIndependentSolver)
{
    Random random (31);
    for (int size = 1; size <= 12; ++size)
    {
        Eigen::MatrixXd copy;
        auto table = randomTable (size, size + 3, copy, random);
        std::vector<double> scales (static_cast<std::size_t> (size));
        ASSERT_TRUE ((Elimination { 0, 0, size }.complete (table, scales)));
        const Eigen::MatrixXd expected = copy.leftCols (size).fullPivLu().solve (copy.rightCols (3));
        for (int row = 0; row < size; ++row)
            for (int column = 0; column < 3; ++column)
                EXPECT_NEAR (table.row (row)[size + column], expected (row, column),
                             1e-9 * expected.cwiseAbs().maxCoeff());
    }
}

TEST (Elimination, LeavesTheSchurComplement)
{
    Random random (32);
    Eigen::MatrixXd copy;
    auto table = randomTable (9, 11, copy, random);
    std::vector<double> scales (5);
    ASSERT_TRUE ((Elimination { 0, 0, 5 }.forward (table, scales)));
    const Eigen::MatrixXd expected =
        copy.bottomRightCorner (4, 6)
        - copy.bottomLeftCorner (4, 5) * copy.topLeftCorner (5, 5).fullPivLu().solve (copy.topRightCorner (5, 6));
    for (int row = 0; row < 4; ++row)
        for (int column = 0; column < 6; ++column)
            EXPECT_NEAR (table.row (5 + row)[5 + column], expected (row, column),
                         1e-9 * expected.cwiseAbs().maxCoeff());
}

TEST (Elimination, ReportsASingularMatrix)
{
    PaddedTable table (2, 3);
    table.row (0)[0] = table.row (1)[0] = 1e-5;
    table.row (0)[1] = table.row (1)[1] = -1e-5;
    std::vector<double> scales (2);
    EXPECT_FALSE ((Elimination { 0, 0, 2 }.complete (table, scales)));
}

} // namespace stopwright

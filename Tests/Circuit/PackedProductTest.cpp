// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/PackedProduct.h"

#include "Support/Random.h"
#include "Support/Tolerances.h"

#include <gtest/gtest.h>

namespace stopwright
{

TEST (PackedProduct, EqualsThePlainSumForEverySize)
{
    Random random (21);
    for (int rows = 1; rows <= 60; ++rows)
    {
        const int first = random.integer (0, 20);
        const int second = random.integer (0, 20);
        PackedProduct product (rows, first, second);
        std::vector<double> v, z, expected (static_cast<std::size_t> (rows), 0.0);
        for (int column = 0; column < first + second; ++column)
        {
            const double factor = random.uniform (-1.0, 1.0);
            (column < first ? v : z).push_back (factor);
            for (int row = 0; row < rows; ++row)
            {
                const double value = random.uniform (-1.0, 1.0);
                product.set (row, column, value);
                expected[static_cast<std::size_t> (row)] += value * factor;
            }
        }
        std::vector<double> y (static_cast<std::size_t> (product.outputSize()), 9.0);
        product.multiply (v.data(), z.data(), y.data());
        for (std::size_t row = 0; row < y.size(); ++row)
            EXPECT_NEAR (y[row], row < expected.size() ? expected[row] : 0.0, 40.0 * tolerance::algebra) << rows;
    }
}

} // namespace stopwright

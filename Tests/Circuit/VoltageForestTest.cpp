// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/VoltageForest.h"

#include "Support/Random.h"

#include <gtest/gtest.h>

namespace stopwright
{

// Random branches with known voltages must give back the node voltages they were made from.
TEST (VoltageForest, RecoversNodeVoltagesFromBranches)
{
    Random random (41);
    for (int trial = 0; trial < 50; ++trial)
    {
        constexpr int nodeCount = 12;
        VoltageForest forest (nodeCount);
        std::vector<double> node (nodeCount, 0.0), branch;
        for (int k = 1; k < nodeCount; ++k)
            node[static_cast<std::size_t> (k)] = random.integer (-9, 9);
        for (int k = 0; k < 14; ++k)
        {
            const int a = random.integer (0, nodeCount - 1);
            const int b = random.integer (0, nodeCount - 1);
            branch.push_back (node[static_cast<std::size_t> (a)] - node[static_cast<std::size_t> (b)]);
            const bool sameTree = forest.root (a) == forest.root (b);
            EXPECT_EQ (forest.join (a, b, k), ! sameTree);
        }
        for (int k = 0; k < nodeCount; ++k)
        {
            double volts = node[static_cast<std::size_t> (forest.root (k))];
            for (const auto& term : forest.potential (k).terms())
                volts += term.weight * branch[static_cast<std::size_t> (term.index)];
            EXPECT_EQ (volts, node[static_cast<std::size_t> (k)]);
        }
        EXPECT_EQ (forest.root (0), 0);
        EXPECT_TRUE (forest.potential (0).isZero());
    }
}

} // namespace stopwright

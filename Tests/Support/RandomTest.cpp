// SPDX-License-Identifier: GPL-3.0-or-later
#include "Support/Random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdlib>

namespace stopwright
{

TEST (Random, GivesTheSameAgainForTheSameSeed)
{
    Random first (7);
    Random again (7);
    Random other (8);
    const auto number = first.bits();
    EXPECT_EQ (number, again.bits());
    if (std::getenv ("STOPWRIGHT_SEED") == nullptr)
    {
        EXPECT_NE (number, other.bits());
    }
}

TEST (Random, StaysInRangeAndReachesItsEnds)
{
    Random random (9);
    std::array<int, 4> seen {};
    double lowest = 1.0;
    double highest = 0.0;
    for (int i = 0; i < 1000; ++i)
    {
        const auto number = random.integer (-1, 2);
        ASSERT_GE (number, -1);
        ASSERT_LE (number, 2);
        ++seen[static_cast<std::size_t> (number + 1)];

        const auto part = random.logUniform (1e-12, 1e-6);
        ASSERT_GE (part, 1e-12);
        ASSERT_LT (part, 1e-6);
        lowest = std::min (lowest, part);
        highest = std::max (highest, part);
    }

    EXPECT_GT (std::ranges::min (seen), 150) << "250 expected of each";
    EXPECT_LT (lowest, 2e-12);
    EXPECT_GT (highest, 5e-7);
}

} // namespace stopwright

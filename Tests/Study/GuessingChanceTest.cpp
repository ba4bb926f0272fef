// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/GuessingChance.h"

#include "Study/BinomialTailTable.h"
#include "Support/Tolerances.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stopwright
{
namespace
{

// The table of MakeBinomialTailTable.py: every count up to 20 rounds, and some up to 1000.
TEST (GuessingChance, IsTheTailOfTheBinomialDistribution)
{
    for (const BinomialTail& row : binomialTails)
        EXPECT_NEAR (guessingChance (row.right, row.rounds) / row.chance, 1.0, tolerance::algebra)
            << row.right << " of " << row.rounds;
}

// The figures that stand in every table for listening tests (from memory): 11 / 1024, and 12 of 16 as the least for 5 %.
TEST (GuessingChance, HasTheFiguresOfTheUsualTables)
{
    EXPECT_EQ (guessingChance (9, 10), 11.0 / 1024.0);
    EXPECT_NEAR (guessingChance (12, 16), 0.0384, 5e-5);
    EXPECT_GT (guessingChance (11, 16), 0.05);
    EXPECT_EQ (guessingChance (1, 1), 0.5);
}

// Closed form: the median of an even count is n / 2, and both tails share its term, about sqrt (2 / (pi n)).
TEST (GuessingChance, HoldsBeyondWhatADoubleCanCount)
{
    const double middle = std::sqrt (2.0 / (std::numbers::pi * 100000.0));
    EXPECT_NEAR (guessingChance (50000, 100000), 0.5 + 0.5 * middle, 1e-7);
    EXPECT_NEAR (guessingChance (50001, 100000), 0.5 - 0.5 * middle, 1e-7);
    EXPECT_EQ (guessingChance (5000, 5000), 0.0);
    EXPECT_EQ (guessingChance (1000, 1000), std::ldexp (1.0, -1000));
}

TEST (GuessingChance, IsCertainForNothingAndImpossibleForMoreThanAll)
{
    EXPECT_EQ (guessingChance (0, 0), 1.0);
    EXPECT_EQ (guessingChance (0, 10), 1.0);
    EXPECT_EQ (guessingChance (-1, 10), 1.0);
    EXPECT_EQ (guessingChance (11, 10), 0.0);
}

} // namespace
} // namespace stopwright

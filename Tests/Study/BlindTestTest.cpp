// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BlindTest.h"

#include "Units/Error.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace stopwright
{
namespace
{

using Trial = BlindTest::Trial;

/// What X is in the first rounds, for a listener who says `said` every time.
std::vector<Trial> drawsOf (std::uint64_t seed, int rounds, Trial said = Trial::a)
{
    BlindTest test (seed);
    std::vector<Trial> draws;
    for (int round = 0; round < rounds; ++round)
    {
        draws.push_back (test.x());
        test.answer (said);
    }
    return draws;
}

TEST (BlindTest, CountsWhatIsRight)
{
    BlindTest test (1);
    for (int round = 1; round <= 10; ++round)
    {
        EXPECT_EQ (test.round(), round);
        const bool isWrongOnPurpose = round == 4;
        const bool isA = test.x() == Trial::a;
        EXPECT_TRUE (test.answer (isA != isWrongOnPurpose ? Trial::a : Trial::b));
    }
    test.finish();
    EXPECT_EQ (test.result().right, 9);
    EXPECT_EQ (test.result().rounds, 10);
    EXPECT_EQ (test.result().guessing(), 11.0 / 1024.0);
}

TEST (BlindTest, KeepsTheScoreUntilItIsFinishedAndThenItsAnswers)
{
    BlindTest test (1);
    test.answer (test.x());
    EXPECT_FALSE (test.isFinished());
    EXPECT_THROW (static_cast<void> (test.result()), Error);
    test.finish();
    EXPECT_TRUE (test.isFinished());
    EXPECT_FALSE (test.answer (test.x()));
    EXPECT_EQ (test.result().right, 1);
    EXPECT_EQ (test.result().rounds, 1);
}

TEST (BlindTest, DrawsTheSameForTheSameSeedWhateverIsSaid)
{
    EXPECT_EQ (drawsOf (7, 200, Trial::a), drawsOf (7, 200, Trial::b));
    EXPECT_NE (drawsOf (7, 200), drawsOf (8, 200));
}

// Within five standard deviations: of n fair draws as many are A as n / 2 +- sqrt (n) / 2, and as many are another than
// the one before (closed form).
TEST (BlindTest, DrawsFairlyAndEachRoundByItself)
{
    constexpr int rounds = 100000;
    const auto draws = drawsOf (2026, rounds);
    const double slack = 5.0 * std::sqrt (rounds) / 2.0;
    EXPECT_NEAR (static_cast<double> (std::ranges::count (draws, Trial::a)), rounds / 2.0, slack);
    for (const int lag : { 1, 2, 3, 8 })
    {
        int changes = 0;
        for (int round = lag; round < rounds; ++round)
            changes += draws[static_cast<std::size_t> (round)] != draws[static_cast<std::size_t> (round - lag)] ? 1 : 0;
        EXPECT_NEAR (changes, (rounds - lag) / 2.0, slack) << lag;
    }
}

// Rounds that were evened out in tens, as is often done, would never have six of a kind begin a ten and would always have
// five A in it. Of the 2000 tens here 252 in 1024 are even by chance.
TEST (BlindTest, IsNotEvenedOut)
{
    const auto draws = drawsOf (11, 20000);
    int even = 0;
    for (auto ten = draws.begin(); ten != draws.end(); ten += 10)
        even += std::count (ten, ten + 10, Trial::a) == 5 ? 1 : 0;
    const double chance = 252.0 / 1024.0;
    EXPECT_NEAR (even, 2000 * chance, 5.0 * std::sqrt (2000 * chance * (1.0 - chance)));
}

// The first draw of a seed is as fair as any: seeds that follow one another do not begin alike.
TEST (BlindTest, TheFirstRoundIsFairToo)
{
    int first = 0;
    for (std::uint64_t seed = 0; seed < 10000; ++seed)
        first += BlindTest (seed).x() == Trial::a ? 1 : 0;
    EXPECT_NEAR (first, 5000.0, 5.0 * 50.0);
}

} // namespace
} // namespace stopwright

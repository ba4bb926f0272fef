// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/AWeighting.h"

#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

// IEC 61672-1:2013, table 3: design goals at the exact frequencies 1000 * 10^(n / 10), to 0.1 dB.
TEST (AWeighting, IsThatOfTheTableAtExactThirds)
{
    struct Goal
    {
        int n;
        double db;
    };

    for (const Goal& goal :
         { Goal { -15, -39.4 }, Goal { -14, -34.6 }, Goal { -13, -30.2 }, Goal { -12, -26.2 }, Goal { -10, -19.1 },
           Goal { -7, -10.9 }, Goal { -5, -6.6 }, Goal { -3, -3.2 }, Goal { 0, 0.0 }, Goal { 3, 1.2 }, Goal { 4, 1.3 },
           Goal { 6, 1.0 }, Goal { 9, -1.1 }, Goal { 10, -2.5 }, Goal { 12, -6.6 }, Goal { 13, -9.3 } })
        EXPECT_NEAR (toDecibels (aWeighting (1000.0 * std::pow (10.0, goal.n / 10.0))), goal.db, 0.05 + 1e-9) << goal.n;
}

// The same expression evaluated by others at round frequencies, to 0.01 dB.
TEST (AWeighting, AtRoundFrequencies)
{
    struct Value
    {
        double hz;
        double db;
    };

    for (const Value& value :
         { Value { 50.0, -30.27 }, Value { 100.0, -19.14 }, Value { 250.0, -8.67 }, Value { 500.0, -3.25 },
           Value { 2000.0, 1.20 }, Value { 4000.0, 0.96 }, Value { 8000.0, -1.15 } })
        EXPECT_NEAR (toDecibels (aWeighting (value.hz)), value.db, 0.01) << value.hz;
}

TEST (AWeighting, HearsNoDirectVoltage)
{
    EXPECT_EQ (aWeighting (0.0), 0.0);
}

} // namespace
} // namespace stopwright

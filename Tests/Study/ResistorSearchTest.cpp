// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ResistorSearch.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{

TEST (ResistorSearch, FindsWhereALevelIsNothing)
{
    for (const double wished : { 15.0, 470.0, 47e3, 9e6 })
    {
        int calls = 0;
        const auto found = resistorWhereZero (
            [&] (double ohms)
            {
                ++calls;
                return 20.0 * std::log10 ((wished + 1e4) / (ohms + 1e4)); // flat below 10 k
            });
        ASSERT_TRUE (found);
        EXPECT_NEAR (*found, wished, 1e-8 * (wished + 1e4));
        EXPECT_LT (calls, 60);
    }
}

TEST (ResistorSearch, SaysWhenALevelStaysOnOneSide)
{
    EXPECT_FALSE (resistorWhereZero ([] (double ohms) { return -std::log (ohms + 1.0); }));
    EXPECT_FALSE (resistorWhereZero ([] (double ohms) { return 30.0 - std::log (ohms); }));
    EXPECT_FALSE (resistorWhereZero ([] (double) { return std::nan (""); }));
}

TEST (ResistorSearch, FindsTheLeastCost)
{
    for (const double wished : { 10.1, 33.0, 47e3, 2.2e6, 9.9e6 })
    {
        const auto found =
            resistorWhereLeast ([wished] (double ohms) { return std::pow (std::log (ohms / wished), 2); });
        ASSERT_TRUE (found);
        EXPECT_NEAR (*found, wished, 1e-7 * wished);
    }
    EXPECT_FALSE (resistorWhereLeast ([] (double ohms) { return ohms; }));
    EXPECT_FALSE (resistorWhereLeast ([] (double ohms) { return -ohms; }));
    EXPECT_FALSE (resistorWhereLeast ([] (double) { return 1.0; }));
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/FlushToZero.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace stopwright
{
namespace
{

/// Halves the smallest normal number, out of the compiler's sight.
double halfOfSmallest()
{
    volatile double number = std::numeric_limits<double>::min();
    number = number * 0.5;
    return number;
}

TEST (FlushToZero, LastsAsLongAsItLives)
{
#if ! defined(__x86_64__) && ! defined(__aarch64__)
    GTEST_SKIP() << "not on this processor";
#endif
    EXPECT_GT (halfOfSmallest(), 0.0);
    double inside = 1.0;
    {
        const FlushToZero flushToZero;
        inside = halfOfSmallest();
    }
    EXPECT_EQ (inside, 0.0);
    EXPECT_GT (halfOfSmallest(), 0.0);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace stopwright
{

TEST (Decibels, AgreeWithTheDefinition)
{
    EXPECT_DOUBLE_EQ (toDecibels (1.0), 0.0);
    EXPECT_DOUBLE_EQ (toDecibels (10.0), 20.0);
    EXPECT_DOUBLE_EQ (toDecibels (0.001), -60.0);
    EXPECT_NEAR (toDecibels (2.0), 6.020599913279624, 1e-14);
    EXPECT_DOUBLE_EQ (fromDecibels (20.0), 10.0);
}

TEST (Decibels, SilenceIsMinusInfinity)
{
    const auto silence = -std::numeric_limits<double>::infinity();
    EXPECT_EQ (toDecibels (0.0), silence);
    EXPECT_EQ (fromDecibels (silence), 0.0);
    EXPECT_TRUE (std::isnan (toDecibels (-1.0)));
}

} // namespace stopwright

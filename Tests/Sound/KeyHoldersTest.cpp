// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/KeyHolders.h"

#include <gtest/gtest.h>

namespace stopwright
{

TEST (KeyHolders, AKeyGoesUpWhenTheLastOneLetsGo)
{
    KeyHolders keys;
    EXPECT_TRUE (keys.change (60, 0, true));
    EXPECT_FALSE (keys.change (60, 3, true));
    EXPECT_FALSE (keys.change (60, 3, true));
    EXPECT_FALSE (keys.change (60, 0, false));
    EXPECT_TRUE (keys.isDown (60));
    EXPECT_FALSE (keys.isHeldBy (60, 0));
    EXPECT_TRUE (keys.isHeldBy (60, 3));
    EXPECT_TRUE (keys.change (60, 3, false));
    EXPECT_FALSE (keys.isDown (60));
    EXPECT_FALSE (keys.change (60, 3, false));
}

TEST (KeyHolders, NothingOutOfRangeIsHeld)
{
    KeyHolders keys;
    EXPECT_FALSE (keys.change (-1, 0, true));
    EXPECT_FALSE (keys.change (128, 0, true));
    EXPECT_FALSE (keys.change (60, KeyHolders::holderCount, true));
    EXPECT_FALSE (keys.change (60, -1, true));
    EXPECT_FALSE (keys.isDown (60));
    EXPECT_FALSE (keys.isDown (-1));
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/HeldKeys.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (HeldKeys, TellsChangesFromRepeats)
{
    HeldKeys held;
    EXPECT_TRUE (held.change (60, true));
    EXPECT_FALSE (held.change (60, true));
    EXPECT_TRUE (held.isDown (60));
    EXPECT_TRUE (held.change (60, false));
    EXPECT_FALSE (held.change (60, false));
    EXPECT_FALSE (held.isDown (60));
}

TEST (HeldKeys, IgnoresWhatIsNoKey)
{
    HeldKeys held;
    for (const int key : { -1, 128, 1 << 30, -(1 << 30) })
    {
        EXPECT_FALSE (held.change (key, true));
        EXPECT_FALSE (held.isDown (key));
    }
}

TEST (HeldKeys, CopiesWithinACompass)
{
    HeldKeys from, to;
    for (const int key : { 20, 36, 60, 97 })
        from.change (key, true);
    to.change (40, true);
    to.copyWithin (from, 36, 96);
    EXPECT_FALSE (to.isDown (20));
    EXPECT_TRUE (to.isDown (36));
    EXPECT_TRUE (to.isDown (60));
    EXPECT_FALSE (to.isDown (97));
    EXPECT_FALSE (to.isDown (40));
    to.clear();
    EXPECT_FALSE (to.isDown (60));
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Phrase.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (Phrase, HoldsKeysFromBeginningToEnd)
{
    const Phrase phrase = heldKeys ({ 60, 64 }, 2.5);
    ASSERT_EQ (phrase.keys.size(), 4U);
    EXPECT_EQ (phrase.seconds, 2.5);
    for (const TimedKey& key : phrase.keys)
        EXPECT_EQ (key.seconds, key.down ? 0.0 : 2.5);
    EXPECT_EQ (phrase.keys[1].key, 64);
    EXPECT_TRUE (phrase.keys[1].down);
    EXPECT_FALSE (phrase.keys[3].down);
    EXPECT_EQ (phrase.keys[3].keyboard, Keyboard::ofChannel (1));
    EXPECT_EQ (heldKeys ({ 60 }, 1.0, Keyboard::ofDivision (2)).keys[1].keyboard, Keyboard::ofDivision (2));
}

} // namespace
} // namespace stopwright

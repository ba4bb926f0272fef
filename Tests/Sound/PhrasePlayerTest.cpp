// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/PhrasePlayer.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (PhrasePlayer, PutsKeysIntoTheirBlocks)
{
    Phrase phrase;
    phrase.keys = { { 0.3, 62, false }, { 0.1, 60, true, 5 }, { 0.1, 61, true }, { -1.0, 59, true } };
    PhrasePlayer player (phrase, 1000.0, 50);
    player.advance (100); // 0 .. 99, the phrase from 50 on
    ASSERT_EQ (player.events().size(), 1U);
    EXPECT_EQ (player.events()[0].key, 59);
    EXPECT_EQ (player.events()[0].frameOffset, 50);
    player.advance (50); // 100 .. 149
    EXPECT_TRUE (player.events().empty());
    player.advance (100); // 150 .. 249
    ASSERT_EQ (player.events().size(), 2U);
    EXPECT_EQ (player.events()[0].key, 60) << "those of one time in the order of the phrase";
    EXPECT_EQ (player.events()[0].frameOffset, 0);
    EXPECT_EQ (player.events()[0].keyboard, 5);
    EXPECT_EQ (player.events()[1].key, 61);
    player.advance (101); // 250 .. 350
    ASSERT_EQ (player.events().size(), 1U);
    EXPECT_EQ (player.events()[0].frameOffset, 100);
    EXPECT_FALSE (player.events()[0].down);
}

TEST (PhrasePlayer, TheShoeStartsInTheLeadIn)
{
    Phrase phrase;
    phrase.swells = { { 0.12, 0.25 }, { 0.0, 0.5 }, { 0.11, 0.75 } };
    PhrasePlayer player (phrase, 1000.0, 200);
    player.advance (100);
    EXPECT_EQ (player.swell(), 0.5) << "before the phrase begins";
    player.advance (200);
    EXPECT_FALSE (player.swell());
    player.advance (100); // 0.1 .. 0.2 s of the phrase
    EXPECT_EQ (player.swell(), 0.25) << "of several moves in a block the last";
    player.advance (100);
    EXPECT_FALSE (player.swell());
}

} // namespace
} // namespace stopwright

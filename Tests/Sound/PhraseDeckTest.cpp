// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/PhraseDeck.h"

#include <gtest/gtest.h>

#include <vector>

namespace stopwright
{
namespace
{

/// A deck at 1000 frames a second that is run block by block; what comes of it is told in frames from the beginning.
class PhraseDeckTest : public testing::Test
{
protected:
    struct Told
    {
        std::int64_t frame = 0;
        PhraseEvent event;
    };

    PhraseDeckTest() { deck_.prepare (1000.0); }

    std::vector<Told> run (int frames, int blockFrames)
    {
        std::vector<Told> told;
        for (const auto last = frame_ + frames; frame_ < last; frame_ += blockFrames)
        {
            deck_.begin();
            while (const auto event = deck_.next (blockFrames))
            {
                EXPECT_GE (event->frameOffset, 0);
                EXPECT_LT (event->frameOffset, blockFrames);
                told.push_back ({ frame_ + event->frameOffset, *event });
            }
        }
        return told;
    }

    static void expectKey (const Told& told, std::int64_t frame, int key, bool down)
    {
        EXPECT_EQ (told.event.kind, PhraseEvent::Kind::key);
        EXPECT_EQ (told.frame, frame);
        EXPECT_EQ (told.event.key.key, key);
        EXPECT_EQ (told.event.key.down, down);
    }

    static void expectRelease (const Told& told, std::int64_t frame)
    {
        EXPECT_EQ (told.event.kind, PhraseEvent::Kind::releaseAll);
        EXPECT_EQ (told.frame, frame);
    }

    /// C4 from 64 to 100 ms, in a phrase of 150.
    static Phrase oneKey() { return { .keys = { { 0.064, 60, true }, { 0.1, 60, false } }, .seconds = 0.15 }; }

    PhraseDeck deck_;
    std::int64_t frame_ = 0;
};

TEST_F (PhraseDeckTest, EveryEventComesAtItsFrameWhateverTheBlocks)
{
    for (const int blockFrames : { 1, 16, 64, 65, 1000 })
    {
        deck_.play (oneKey());
        frame_ = 0;
        const auto told = run (1000, blockFrames);
        ASSERT_EQ (told.size(), 3U) << blockFrames;
        expectKey (told[0], 64, 60, true); // with blocks of 64 the first of the second block
        expectKey (told[1], 100, 60, false);
        expectRelease (told[2], 150);
        EXPECT_FALSE (deck_.isPlaying());
    }
}

TEST_F (PhraseDeckTest, TheShoeMovesBeforeAKeyOfTheSameTime)
{
    deck_.play ({ .keys = { { 0.01, 60, true } }, .seconds = 0.1, .swells = { { 0.02, 0.5 }, { 0.01, 0.25 } } });
    const auto told = run (50, 50);
    ASSERT_EQ (told.size(), 3U);
    EXPECT_EQ (told[0].event.swellPosition, 0.25);
    expectKey (told[1], 10, 60, true);
    EXPECT_EQ (told[2].event.swellPosition, 0.5);
    EXPECT_EQ (told[2].frame, 20);
}

TEST_F (PhraseDeckTest, ALoopBeginsAgainAtItsEndToTheFrame)
{
    deck_.setLoop (true);
    deck_.play (oneKey());
    const auto told = run (490, 7);
    ASSERT_EQ (told.size(), 9U);
    for (int round = 0; round < 3; ++round)
    {
        const auto first = static_cast<std::size_t> (3 * round);
        expectKey (told[first], 150 * round + 64, 60, true);
        expectKey (told[first + 1], 150 * round + 100, 60, false);
        expectRelease (told[first + 2], 150 * round + 150);
    }
    EXPECT_TRUE (deck_.isPlaying());
    deck_.setLoop (false);
    run (140, 7);
    EXPECT_FALSE (deck_.isPlaying());
}

TEST_F (PhraseDeckTest, ALoopMayBeShorterThanABlock)
{
    deck_.setLoop (true);
    deck_.play ({ .keys = { { 0.0, 60, true }, { 0.0, 60, false } } }); // takes no time: lasts the least time
    const auto told = run (1000, 1000);
    ASSERT_EQ (told.size(), 60U - 1U); // the last pass ends with the block after
    expectKey (told[3], 50, 60, true);
    expectKey (told[57], 950, 60, true);
}

TEST_F (PhraseDeckTest, StoppingLetsGoWithTheNextBlock)
{
    deck_.play (oneKey());
    EXPECT_TRUE (deck_.isPlaying());
    run (70, 70);
    deck_.stop();
    EXPECT_FALSE (deck_.isPlaying());
    const auto told = run (140, 70);
    ASSERT_EQ (told.size(), 1U);
    expectRelease (told[0], 70);
    deck_.stop(); // there is nothing to stop
    EXPECT_TRUE (run (140, 70).empty());
}

TEST_F (PhraseDeckTest, AnotherPhraseTakesTheOnesPlace)
{
    deck_.play (oneKey());
    run (70, 70);
    deck_.play ({ .keys = { { 0.0, 40, true } }, .seconds = 1.0 });
    deck_.play ({ .keys = { { 0.001, 50, true } }, .seconds = 2.0 }); // the one before it never began
    EXPECT_EQ (deck_.lengthSeconds(), 2.0);
    EXPECT_EQ (deck_.positionSeconds(), 0.0);
    const auto told = run (70, 70);
    ASSERT_EQ (told.size(), 2U);
    expectRelease (told[0], 70);
    expectKey (told[1], 71, 50, true);
    EXPECT_NEAR (deck_.positionSeconds(), 0.07, 1e-12);
    deck_.collect();
    EXPECT_NEAR (deck_.positionSeconds(), 0.07, 1e-12);
}

TEST_F (PhraseDeckTest, AtAnotherRateThePhraseGoesOnFromWhereItIs)
{
    deck_.play (oneKey());
    run (50, 50);
    deck_.prepare (4000.0);
    deck_.begin();
    auto event = deck_.next (100);
    ASSERT_TRUE (event);
    EXPECT_EQ (event->frameOffset, 56); // 14 ms later
    EXPECT_FALSE (deck_.next (100));
    EXPECT_NEAR (deck_.positionSeconds(), 0.075, 1e-12);
}

TEST_F (PhraseDeckTest, WithoutAPhraseNothingHappens)
{
    EXPECT_TRUE (run (100, 50).empty());
    EXPECT_FALSE (deck_.isPlaying());
    EXPECT_EQ (deck_.lengthSeconds(), 0.0);
}

} // namespace
} // namespace stopwright

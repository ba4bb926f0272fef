// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/VoicePlayer.h"

#include "Sound/TestCards.h"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <vector>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = 48000.0;

class VoicePlayerTest : public testing::Test
{
protected:
    PlayedVoice& make (const Card& card, double referenceVolts = 1.0)
    {
        cards_.push_back (std::make_unique<PlayedVoice> (
            std::make_unique<CardVoice> (card, keySourceForCardAlone (card), StreamSpec {}), referenceVolts, cards_));
        return *cards_.back();
    }

    static const CardVoice& cardOf (const PlayedVoice& played)
    {
        return dynamic_cast<const CardVoice&> (*played.voice);
    }

    std::vector<double> render (int frames)
    {
        std::vector<double> out (static_cast<std::size_t> (frames));
        for (std::size_t start = 0; start < out.size(); start += Voice::pieceFrames)
        {
            const auto count = std::min<std::size_t> (Voice::pieceFrames, out.size() - start);
            player_.renderPiece (std::span (out).subspan (start, count));
        }
        return out;
    }

    VoicePlayer player_ { rateHz };

private:
    std::vector<std::unique_ptr<PlayedVoice>> cards_;
};

TEST_F (VoicePlayerTest, IsSilentWithoutACard)
{
    EXPECT_EQ (peakOf (render (640)), 0.0);
    EXPECT_TRUE (player_.isReady());
    EXPECT_FALSE (player_.hasFault());
}

TEST_F (VoicePlayerTest, ScalesByTheReference)
{
    player_.take (make (plainCard(), 0.25));
    player_.key (0, 69, true, 0);
    EXPECT_NEAR (rmsOf (render (48000)), 2.0, 0.05); // 0.5 V rms of a square, but for its partials above hearing
    EXPECT_NEAR (player_.takePeakVolts(), 0.55, 0.1);
    EXPECT_EQ (player_.takePeakVolts(), 0.0);
}

TEST_F (VoicePlayerTest, LetsGoOfTheOldCardAfterTheFade)
{
    PlayedVoice& first = make (plainCard());
    player_.take (first);
    EXPECT_TRUE (player_.isReady()); // nothing to fade from
    PlayedVoice& second = make (otherCard());
    player_.take (second);
    EXPECT_FALSE (player_.isReady());
    render (static_cast<int> (0.9 * VoicePlayer::fadeSeconds * rateHz));
    EXPECT_FALSE (first.wasReleased.load());
    render (static_cast<int> (0.2 * VoicePlayer::fadeSeconds * rateHz));
    EXPECT_TRUE (first.wasReleased.load());
    EXPECT_FALSE (second.wasReleased.load());
    EXPECT_TRUE (player_.isReady());
}

// Fading into the very same card must not be heard at all: weights that do not sum to 1 would show here.
TEST_F (VoicePlayerTest, FadesIntoTheSameWithoutATrace)
{
    VoicePlayer alone { rateHz };
    PlayedVoice& reference = make (nearSineCard());
    alone.take (reference);
    player_.take (make (nearSineCard()));
    for (VoicePlayer* const player : { &alone, &player_ })
        player->key (0, 57, true, 0);

    std::vector<double> expected (Voice::pieceFrames);
    for (int piece = 0; piece < 300; ++piece)
    {
        if (piece == 100)
            player_.take (make (nearSineCard()));
        alone.renderPiece (expected);
        const auto got = render (Voice::pieceFrames);
        for (std::size_t i = 0; i < got.size(); ++i)
            ASSERT_NEAR (got[i], expected[i], 1e-5) << piece;
    }
}

// The network's own slope is the measure: a fade may not make a bigger step than either card does by itself.
TEST_F (VoicePlayerTest, FadesWithoutAStep)
{
    Card changed = nearSineCard();
    changed.parts.push_back ({ .name = "Rx", .nodes = { "out", "0" }, .value = Resistor { 47e3 } });

    player_.take (make (nearSineCard(), 0.2));
    player_.key (0, 57, true, 0);
    render (24000);
    const double before = largestStep (render (4800));
    player_.take (make (changed, 0.1));
    const double during = largestStep (render (2400));
    render (4800);
    const double after = largestStep (render (4800));
    EXPECT_LT (during, 1.05 * std::max (before, after));
    EXPECT_GT (during, 0.0);
}

TEST_F (VoicePlayerTest, TakesHeldKeysAlong)
{
    player_.take (make (plainCard()));
    player_.key (0, 60, true, 0);
    player_.key (0, 67, true, 0);
    render (640);
    player_.take (make (otherCard()));
    player_.key (0, 72, true, 0);
    render (9600);
    EXPECT_EQ (player_.soundingKeys(), 3);
    player_.releaseAllKeys();
    render (9600);
    EXPECT_EQ (player_.soundingKeys(), 0);
}

TEST_F (VoicePlayerTest, DropsAFaultyCardAtOnce)
{
    PlayedVoice& faulty = make (runawayCard());
    player_.take (faulty);
    player_.key (0, 69, true, 0);
    render (4800);
    faulty.turn (cardOf (faulty).findKnob ({ "Rf", KnobKind::value }), 100e3);
    player_.deliverTurns();
    render (48000);
    EXPECT_TRUE (player_.hasFault());

    player_.take (make (plainCard()));
    EXPECT_TRUE (faulty.wasReleased.load());
    EXPECT_FALSE (player_.hasFault());
    EXPECT_GT (rmsOf (render (4800)), 0.1);
}

TEST_F (VoicePlayerTest, TurnsGoToTheCardTheyWereMadeFor)
{
    PlayedVoice& first = make (plainCard());
    PlayedVoice& second = make (plainCard());
    player_.take (first);
    player_.key (0, 69, true, 0);
    render (4800);
    first.turn (cardOf (first).findTapLevelKnob ("W1"), 200.0); // too late: the card leaves
    player_.take (second);
    player_.deliverTurns();
    EXPECT_FALSE (player_.controlsMove());
    render (9600);
    EXPECT_LT (peakOf (render (4800)), 1.0);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a host, a player and a technician in a hurry can do to the engine, all at once: nothing may come out but sound
// within its bounds, and the audio thread may not allocate, free or lock.
#include "Sound/Engine.h"
#include "Sound/ListeningStage.h"
#include "Sound/OfflineRender.h"
#include "Sound/TestCards.h"
#include "Sound/TestVoice.h"
#include "Support/AllocationGuard.h"
#include "Support/Random.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>
#include <optional>
#include <vector>

namespace stopwright
{
namespace
{

using namespace test;

/// An engine and everything that may be done to it between two blocks.
class RoughPlayer
{
public:
    explicit RoughPlayer (std::uint64_t seed) : random_ (seed)
    {
        for (const auto& name : { "Krummhorn8", "VoxHumana8", "Quint2-2-3" })
            cards_.push_back (presetCard (name));
        cards_.push_back (plainCard());
        cards_.push_back (otherCard());
        cards_.push_back (nearSineCard());
    }

    void prepare (double rateHz, int maxFrames)
    {
        engine_.prepare ({ .deviceRateHz = rateHz, .maxFrames = maxFrames });
        if (! card_)
            setCard();
    }

    /// From now on it may be a whole instrument that is set, too.
    void bringOrgan() { organ_ = larkfield(); }

    void setCard()
    {
        card_ = &cards_[static_cast<std::size_t> (random_.integer (0, static_cast<int> (cards_.size()) - 1))];
        engine_.setCard (*card_, keySourceForCardAlone (*card_), random_.chance (0.5), random_.uniform (-60.0, 20.0));
    }

    void setInstrument()
    {
        for (auto& stop : organ_->instrument.stops)
            stop.drawn = random_.chance (0.4);
        for (auto& coupler : organ_->instrument.couplers)
            coupler.drawn = random_.chance (0.2);
        const auto& inHand = anyOf (organ_->instrument.stops);
        card_ = &*organ_->cards.ofStops[static_cast<std::size_t> (&inHand - organ_->instrument.stops.data())];
        engine_.setInstrument (organ_->instrument, organ_->cards, inHand.name, random_.chance (0.1));
    }

    /// Knobs anywhere in or out of range, keys, levels, cards.
    void meddle()
    {
        if (random_.chance (0.02))
            organ_&& random_.chance (0.7) ? setInstrument() : setCard();
        if (organ_)
            playOrgan();
        if (random_.chance (0.5))
            turnSomething();
        if (random_.chance (0.3))
            engine_.key (random_.integer (0, 127), random_.chance (0.5));
        if (random_.chance (0.01))
            engine_.releaseAllKeys();
        if (random_.chance (0.05))
            engine_.setListeningLevelDb (random_.uniform (-100.0, 20.0));
        if (random_.chance (0.05))
            engine_.setTrialGainDb (random_.uniform (-60.0, 20.0));
        if (random_.chance (0.05))
            engine_.collectReplaced();
        if (random_.chance (0.1))
            engine_.telemetry();
    }

    /// One block, watched.
    void play (int frames)
    {
        left_.assign (static_cast<std::size_t> (frames), 9.0F);
        events_.clear();
        for (int i = random_.integer (0, 3); i > 0; --i)
            events_.push_back ({ random_.integer (-5, frames + 5), random_.integer (-3, 140), random_.chance (0.5),
                                 random_.integer (-1, Keyboard::count) });

        float* const channels[] = { left_.data() };
        const AllocationGuard guard;
        engine_.process (events_, channels, frames);
        allocations_ += guard.allocations() + guard.releases();
        locks_ += guard.locks();

        const auto ceiling = static_cast<float> (fromDecibels (ListeningStage::ceilingDb));
        for (const float sample : left_)
        {
            const bool isClean = std::isnormal (sample) || sample == 0.0F;
            badSamples_ += isClean && std::abs (sample) <= ceiling ? 0U : 1U;
            heardSomething_ = heardSomething_ || std::abs (sample) > 1e-3F;
        }
    }

    void expectClean() const
    {
        EXPECT_EQ (badSamples_, 0U);
        EXPECT_TRUE (heardSomething_);
        if (AllocationGuard::isAvailable)
        {
            EXPECT_EQ (allocations_, 0U);
            EXPECT_EQ (locks_, 0U);
        }
    }

    Engine& engine() { return engine_; }

private:
    template <typename Item>
    const Item& anyOf (const std::vector<Item>& items)
    {
        return items[static_cast<std::size_t> (random_.integer (0, static_cast<int> (items.size()) - 1))];
    }

    /// Tablets, couplers, outlets, the shoe, mixing resistors and other keyboards.
    void playOrgan()
    {
        const auto& instrument = organ_->instrument;
        if (random_.chance (0.3))
            engine_.draw (anyOf (instrument.stops).name, random_.chance (0.5));
        if (random_.chance (0.05))
            engine_.drawCoupler (anyOf (instrument.couplers).name, random_.chance (0.5));
        if (random_.chance (0.05))
            engine_.switchOutlet (anyOf (instrument.outlets).name, random_.chance (0.5));
        if (random_.chance (0.1))
            engine_.turnMixing (anyOf (instrument.stops).name, random_.logUniform (1e-3, 1e12));
        if (random_.chance (0.1))
            engine_.setSwell (random_.uniform (-0.5, 1.5));
        if (random_.chance (0.3))
            engine_.key (random_.integer (0, 127), random_.chance (0.5), random_.integer (-1, 17));
    }

    void turnSomething()
    {
        if (random_.chance (0.2))
        {
            engine_.turnTapLevel (card_->taps[0].name, random_.logUniform (1e-3, 1e5));
            return;
        }
        const auto& part =
            card_->parts[static_cast<std::size_t> (random_.integer (0, static_cast<int> (card_->parts.size()) - 1))];
        const bool isPotentiometer = std::holds_alternative<Potentiometer> (part.value);
        engine_.turn ({ part.name, isPotentiometer ? KnobKind::position : KnobKind::value },
                      isPotentiometer ? random_.uniform (-0.1, 1.1) : random_.logUniform (1e-10, 1e7));
    }

    Random random_;
    Engine engine_;
    std::vector<Card> cards_;
    std::optional<TestOrgan> organ_;
    const Card* card_ = nullptr;
    std::vector<float> left_;
    std::vector<KeyEvent> events_;
    std::size_t badSamples_ = 0;
    std::size_t allocations_ = 0;
    std::size_t locks_ = 0;
    bool heardSomething_ = false;
};

TEST (Misuse, EveryRateAndBlockIsSoundAndRealTimeSafe)
{
    RoughPlayer player (91);
    for (const double rateHz : { 44100.0, 48000.0, 88200.0, 96000.0, 176400.0, 192000.0 })
        for (const int block : { 1, 16, 63, 64, 512, 4096 })
        {
            player.prepare (rateHz, block);
            int frames = 0;
            for (int count = 0; count < 300 && frames < rateHz / 2; ++count, frames += block)
            {
                player.meddle();
                player.play (block);
            }
        }
    player.expectClean();
}

TEST (Misuse, BlocksBiggerThanPreparedAreRunInPieces)
{
    RoughPlayer player (92);
    player.prepare (48000.0, 16);
    for (const int block : { 17, 64, 65, 1000, 10000, 0, 1 })
        for (int count = 0; count < 10; ++count)
        {
            player.meddle();
            player.play (block);
        }
    player.expectClean();
}

TEST (Misuse, PreparingTwiceIsAsGoodAsOnce)
{
    Engine once, twice;
    once.prepare ({ .deviceRateHz = 48000.0, .maxFrames = 64 });
    twice.prepare ({ .deviceRateHz = 96000.0, .maxFrames = 4096 });
    twice.prepare ({ .deviceRateHz = 48000.0, .maxFrames = 64 });
    for (Engine* const engine : { &once, &twice })
        engine->setCard (otherCard(), keySourceForCardAlone (otherCard()), true);
    twice.prepare ({ .deviceRateHz = 48000.0, .maxFrames = 64 });
    EXPECT_EQ (renderHeard (once, 24000, { { 0, 60, true } }), renderHeard (twice, 24000, { { 0, 60, true } }));
}

TEST (Misuse, ManyCardsAndKnobsForSixtySeconds)
{
    RoughPlayer player (93);
    player.prepare (48000.0, 512);
    for (int block = 0; block < 60 * 48000 / 512; ++block)
    {
        player.meddle();
        player.play (512);
    }
    player.expectClean();
}

TEST (Misuse, AWholeOrganAtEveryRateAndBlock)
{
    RoughPlayer player (94);
    player.bringOrgan();
    for (const double rateHz : { 44100.0, 48000.0, 88200.0, 96000.0, 192000.0 })
        for (const int block : { 1, 16, 63, 64, 512, 4096 })
        {
            player.prepare (rateHz, block);
            player.setInstrument();
            int frames = 0;
            for (int count = 0; count < 150 && frames < rateHz / 4; ++count, frames += block)
            {
                player.meddle();
                player.play (block);
            }
        }
    player.expectClean();
}

TEST (Misuse, OrgansCardsAndTabletsForSixtySeconds)
{
    RoughPlayer player (95);
    player.bringOrgan();
    player.prepare (48000.0, 512);
    player.setInstrument();
    for (int block = 0; block < 60 * 48000 / 512; ++block)
    {
        player.meddle();
        player.play (512);
    }
    player.expectClean();
}

// The guard itself can fail: setting a card from the audio thread would be seen.
TEST (Misuse, TheGuardWouldSeeAnAllocation)
{
    if (! AllocationGuard::isAvailable)
        GTEST_SKIP() << "a sanitizer has malloc";
    Engine engine;
    const AllocationGuard guard;
    engine.setCard (plainCard(), keySourceForCardAlone (plainCard()), true);
    EXPECT_GT (guard.allocations(), 0U);
    EXPECT_GT (guard.locks(), 0U);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
//
// One thread plays, one sets cards, one turns and presses, one reads: what the program does, only faster. To be run
// under ThreadSanitizer, which finds what goes wrong without it going wrong.
#include "Sound/Engine.h"
#include "Sound/TestCards.h"
#include "Sound/TestVoice.h"
#include "Support/Random.h"

#include <gtest/gtest.h>

#include <array>
#include <atomic>
#include <cmath>
#include <thread>

namespace stopwright
{
namespace
{

using namespace test;

constexpr int blocks = 2500;
constexpr int blockFrames = 64;

void playBlocks (Engine& engine, std::atomic<bool>& isOver, std::atomic<int>& badSamples)
{
    std::array<float, blockFrames> heard {};
    float* const channels[] = { heard.data() };
    for (int block = 0; block < blocks; ++block)
    {
        const KeyEvent event { block % blockFrames, 36 + block % 61, block % 3 != 0, block % Keyboard::count };
        engine.process (std::span (&event, 1), channels, blockFrames);
        for (const float sample : heard)
            if (! std::isnormal (sample) && sample != 0.0F)
                ++badSamples;
    }
    isOver = true;
}

void turnAndPress (Engine& engine, const std::atomic<bool>& isOver)
{
    Random random (51);
    while (! isOver)
    {
        engine.turn ({ "R1", KnobKind::value }, random.logUniform (1e3, 1e6));
        engine.turn ({ "C1", KnobKind::value }, random.logUniform (1e-10, 1e-7));
        engine.turnTapLevel ("W1", random.uniform (0.1, 4.0));
        engine.key (random.integer (36, 96), random.chance (0.5), random.integer (0, 2));
        engine.draw (random.chance (0.5) ? "One" : "Two", random.chance (0.5));
        engine.turnMixing ("One", random.logUniform (1e3, 1e6));
        engine.setSwell (random.uniform (0.0, 1.0));
        engine.setListeningLevelDb (random.uniform (-60.0, -10.0));
        if (random.chance (0.01))
            engine.releaseAllKeys();
        std::this_thread::yield();
    }
}

void setCards (Engine& engine, const std::atomic<bool>& isOver)
{
    const std::vector<Card> cards { plainCard(), otherCard(), nearSineCard() };
    std::vector<KeySource> sources;
    sources.reserve (cards.size());
    for (const Card& card : cards)
        sources.push_back (keySourceForCardAlone (card));
    auto organ = emptyOrgan ({});
    organ.add ("One", plainCard(), "Upper");
    organ.add ("Two", otherCard(), "Lower").drawn = false;
    for (std::size_t count = 0; ! isOver; ++count)
    {
        if (count % 2 == 1)
            engine.setInstrument (organ.instrument, organ.cards, "One", false);
        else
            engine.setCard (cards[count % 3], sources[count % 3], count % 4 == 0);
        if (count % 5 == 0)
            engine.collectReplaced();
        std::this_thread::yield();
    }
}

TEST (EngineThreads, PlayWhileCardsChangeAndKnobsTurn)
{
    Engine engine;
    engine.prepare ({ .deviceRateHz = 48000.0, .maxFrames = blockFrames });
    std::atomic<bool> isOver { false };
    std::atomic<int> badSamples { 0 };
    std::thread turner ([&] { turnAndPress (engine, isOver); });
    std::thread setter ([&] { setCards (engine, isOver); });
    std::thread reader (
        [&]
        {
            while (! isOver)
            {
                EXPECT_GE (engine.telemetry().loadFraction, 0.0);
                std::this_thread::yield();
            }
        });
    std::thread player ([&] { playBlocks (engine, isOver, badSamples); });

    for (std::thread* const thread : { &player, &turner, &setter, &reader })
        thread->join();
    EXPECT_EQ (badSamples, 0);
}

TEST (EngineThreads, TheLastTurnArrivesWhateverTheTiming)
{
    Engine engine;
    engine.prepare ({ .deviceRateHz = 48000.0, .maxFrames = blockFrames });
    engine.setCard (plainCard(), keySourceForCardAlone (plainCard()), true);
    engine.key (69, true);
    renderHeard (engine, 48000);
    for (int round = 0; round < 5; ++round)
    {
        std::atomic<bool> isOver { false };
        std::thread turner (
            [&]
            {
                for (int turn = 0; turn < 20000; ++turn)
                    engine.turnTapLevel ("W1", 1.0 + turn % 7);
                engine.turnTapLevel ("W1", round % 2 == 0 ? 1.0 : 2.0);
                isOver = true;
            });
        while (! isOver)
            renderHeard (engine, blockFrames);
        turner.join();
        renderHeard (engine, 9600);
        engine.telemetry();
        renderHeard (engine, 4800);
        EXPECT_NEAR (engine.telemetry().peakVolts, round % 2 == 0 ? 0.27 : 0.55, 0.04);
    }
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Engine.h"

#include "Sound/EngineRun.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>

namespace stopwright
{
namespace
{

// Cards and values that change while it plays.
using namespace test;

TEST (EngineChanges, AnEditIsHeardLouderUnlessTheReferenceIsTakenAfresh)
{
    Engine engine;
    const double before = startPlaying (engine, plainCard(), 60);

    Card louder = plainCard();
    louder.taps[0].voltsPeakToPeak *= 2.0;
    engine.setCard (louder, keySourceForCardAlone (louder), false);
    renderHeard (engine, second);
    EXPECT_NEAR (steadyDb (engine) - before, 6.0206, 0.01);

    engine.setCard (louder, keySourceForCardAlone (louder), true);
    renderHeard (engine, second);
    EXPECT_NEAR (steadyDb (engine) - before, 0.0, 0.01);
}

TEST (EngineChanges, TurnsReachTheSound)
{
    Engine engine;
    const double before = startPlaying (engine, plainCard(), 69);
    EXPECT_TRUE (engine.turnTapLevel ("W1", 1.0));
    EXPECT_TRUE (engine.turn ({ "R2", KnobKind::value }, 30e3));
    EXPECT_FALSE (engine.turn ({ "R7", KnobKind::value }, 30e3));
    EXPECT_FALSE (engine.turnTapLevel ("W7", 1.0));
    EXPECT_FALSE (engine.turnTapLevel ("W1", std::nan ("")));
    renderHeard (engine, second / 10);
    EXPECT_NEAR (steadyDb (engine) - before, toDecibels (0.5 * 0.75 / 0.5), 0.01);
}

TEST (EngineChanges, AFastDragNeverLosesItsLastValue)
{
    Engine engine;
    const double before = startPlaying (engine, plainCard(), 69);
    for (int turn = 0; turn <= 100000; ++turn)
        engine.turnTapLevel ("W1", turn * 4e-5);
    renderHeard (engine, 64);
    EXPECT_TRUE (engine.telemetry().knobsMoving);
    renderHeard (engine, second / 10);
    EXPECT_FALSE (engine.telemetry().knobsMoving);
    EXPECT_NEAR (steadyDb (engine) - before, 6.0206, 0.01);
}

TEST (EngineChanges, TurnsMadeBeforeACardIsTakenBelongToIt)
{
    Engine engine;
    const double before = startPlaying (engine, plainCard(), 69);
    engine.turnTapLevel ("W1", 8.0); // of the old card
    engine.setCard (plainCard(), keySourceForCardAlone (plainCard()), false);
    engine.turnTapLevel ("W1", 1.0); // of the next
    renderHeard (engine, second);
    EXPECT_NEAR (steadyDb (engine) - before, -6.0206, 0.01);
}

TEST (EngineChanges, TheLatestCardWinsWhileOneFades)
{
    Engine engine;
    const double before = startPlaying (engine, plainCard(), 69);

    Card card = plainCard();
    for (const double volts : { 4.0, 8.0, 16.0, 1.0 })
    {
        card.taps[0].voltsPeakToPeak = volts;
        engine.setCard (card, keySourceForCardAlone (card), false);
        if (volts == 4.0)
            renderHeard (engine, 64); // this one is taken, and its fade is under way when the others come
    }
    renderHeard (engine, second);
    engine.collectReplaced();
    EXPECT_NEAR (steadyDb (engine) - before, -6.0206, 0.01);
    EXPECT_EQ (engine.telemetry().soundingKeys, 1);
}

TEST (EngineChanges, AnUnsoundCardLeavesTheSoundAlone)
{
    Engine engine;
    const double before = startPlaying (engine, plainCard(), 69);
    Card unsound = plainCard();
    unsound.output = "nowhere";
    EXPECT_THROW (engine.setCard (unsound, keySourceForCardAlone (unsound), true), Error);
    EXPECT_NEAR (steadyDb (engine), before, 0.01);
    EXPECT_TRUE (engine.turnTapLevel ("W1", 2.0));
}

TEST (EngineChanges, KeepsCardAndTurnsWhenTheDeviceChanges)
{
    Engine engine;
    start (engine, plainCard());
    engine.turnTapLevel ("W1", 1.0);
    renderHeard (engine, second / 10);
    engine.prepare ({ .deviceRateHz = 44100.0, .maxFrames = 64 });
    engine.prepare ({ .deviceRateHz = 48000.0, .maxFrames = 64 });
    renderHeard (engine, second / 2);
    engine.key (60, true);
    renderHeard (engine, second);
    EXPECT_NEAR (steadyDb (engine), Engine::startListeningLevelDb - 6.0206, tolerance::audibleDb);
}

// From the turn to nine tenths of its effect, in blocks as a device asks for them.
TEST (EngineChanges, AKnobIsHeardWithinThirtyMilliseconds)
{
    for (const int block : { 64, 256 })
    {
        Engine engine;
        start (engine, nearSineCard());
        engine.key (57, true);
        renderHeard (engine, second);
        const double before = rmsOf (renderHeard (engine, second));
        engine.turnTapLevel ("W1", 4.0);
        const auto turned = renderHeard (engine, second / 4, {}, block);

        // The rms of one period of A3, which has almost no partials here, against its start.
        const int period = 218;
        int frame = 0;
        while (rmsOf (std::span (turned).subspan (static_cast<std::size_t> (frame), static_cast<std::size_t> (period)))
               < 1.9 * before)
            ++frame;
        const double milliseconds = 1000.0 * (frame + 0.5 * period) / second;
        std::printf ("knob to sound, blocks of %d: %.1f ms\n", block, milliseconds);
        EXPECT_LT (milliseconds, 30.0);
        EXPECT_GT (milliseconds, 5.0); // a jump would click
    }
}

} // namespace
} // namespace stopwright

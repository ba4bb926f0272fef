// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Engine.h"

#include "Sound/EngineRun.h"
#include "Sound/ListeningReference.h"
#include "Sound/ListeningStage.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace stopwright
{
namespace
{

using namespace test;

TEST (Engine, IsSilentBeforeAnything)
{
    Engine engine;
    EXPECT_EQ (peakOf (renderHeard (engine, 4800, { { 0, 60, true } })), 0.0);
    EXPECT_EQ (engine.listeningLevelDb(), Engine::startListeningLevelDb);
    EXPECT_FALSE (engine.turn ({ "R1", KnobKind::value }, 1.0));
}

TEST (Engine, StartsAtThirtyDecibelsBelowFullScale)
{
    for (const Card& card : { plainCard(), nearSineCard(), otherCard(), presetCard ("Krummhorn8") })
    {
        Engine engine;
        start (engine, card);
        engine.key (60, true);
        renderHeard (engine, second);
        EXPECT_NEAR (steadyDb (engine), Engine::startListeningLevelDb, tolerance::audibleDb) << card.name;
    }
}

TEST (Engine, DoesNotAmplifyADeadCardWithoutEnd)
{
    Card dead = plainCard();
    dead.taps[0].voltsPeakToPeak = 2e-9;
    EXPECT_EQ (referenceVolts (dead, keySourceForCardAlone (dead)), lowestReferenceVolts);
    Engine engine;
    start (engine, dead);
    engine.key (60, true);
    renderHeard (engine, second);
    EXPECT_LT (steadyDb (engine), -120.0);
}

TEST (Engine, TakesTheNearestKeyWhereThereIsNoMiddleC)
{
    KeySource pedals = keySourceForCardAlone (plainCard());
    pedals.lowestKey = 24;
    pedals.highestKey = 55;
    EXPECT_NEAR (referenceVolts (plainCard(), pedals), 0.5, 0.01);
}

TEST (Engine, RefusesImpossibleDevices)
{
    Engine engine;
    EXPECT_THROW (engine.prepare ({ .deviceRateHz = 0.0, .maxFrames = 64 }), Error);
    EXPECT_THROW (engine.prepare ({ .deviceRateHz = std::nan (""), .maxFrames = 64 }), Error);
    EXPECT_THROW (engine.prepare ({ .deviceRateHz = 1e7, .maxFrames = 64 }), Error);
    EXPECT_THROW (engine.prepare ({ .deviceRateHz = 48000.0, .maxFrames = 0 }), Error);
    EXPECT_NO_THROW (engine.prepare ({ .deviceRateHz = 8000.0, .maxFrames = 1 }));
}

TEST (Engine, ClampsItsListeningLevel)
{
    Engine engine;
    engine.setListeningLevelDb (20.0);
    EXPECT_EQ (engine.listeningLevelDb(), Engine::highestListeningLevelDb);
    engine.setListeningLevelDb (-500.0);
    EXPECT_EQ (engine.listeningLevelDb(), Engine::lowestListeningLevelDb);
    engine.setListeningLevelDb (std::nan (""));
    EXPECT_EQ (engine.listeningLevelDb(), Engine::lowestListeningLevelDb);
}

TEST (Engine, GoesSilentOnAFaultUntilTheNextCard)
{
    Engine engine;
    start (engine, runawayCard());
    engine.key (69, true);
    renderHeard (engine, second);
    EXPECT_FALSE (engine.telemetry().silencedByFault);
    engine.turn ({ "Rf", KnobKind::value }, 100e3);
    const auto runaway = renderHeard (engine, second);
    EXPECT_LE (peakOf (runaway), fromDecibels (ListeningStage::ceilingDb) + 1e-6);
    EXPECT_TRUE (engine.telemetry().silencedByFault);
    EXPECT_EQ (peakOf (renderHeard (engine, second)), 0.0);

    engine.setCard (plainCard(), keySourceForCardAlone (plainCard()), true);
    const auto fading = renderHeard (engine, second);
    EXPECT_FALSE (engine.telemetry().silencedByFault);
    EXPECT_LT (peakOf (std::span (fading).first (2400)), 0.01 * fromDecibels (-30.0)); // 50 ms
    EXPECT_NEAR (steadyDb (engine), -30.0, 1.0);                                       // the key is still held
}

TEST (Engine, HearsKeysFromBothSides)
{
    Engine engine;
    start (engine, plainCard());
    engine.key (60, true);
    renderHeard (engine, 640, { { 5, 64, true } });
    EXPECT_EQ (engine.telemetry().soundingKeys, 2);
    EXPECT_EQ (engine.telemetry().lastKey, 64);
    engine.releaseAllKeys();
    renderHeard (engine, second / 10);
    EXPECT_EQ (engine.telemetry().soundingKeys, 0);
}

TEST (Engine, AKeyHeldFromBothSidesSoundsUntilBothLetGo)
{
    Engine engine;
    start (engine, plainCard());
    engine.key (60, true);
    renderHeard (engine, 640, { { 5, 60, true } });
    renderHeard (engine, second / 10, { { 0, 60, false } });
    EXPECT_EQ (engine.telemetry().soundingKeys, 1);
    engine.key (60, false);
    renderHeard (engine, second / 10);
    EXPECT_EQ (engine.telemetry().soundingKeys, 0);

    renderHeard (engine, 640, { { 0, 60, true } });
    engine.key (60, true);
    engine.key (60, false);
    renderHeard (engine, second / 10);
    EXPECT_EQ (engine.telemetry().soundingKeys, 1);
}

TEST (Engine, SaysWhenTheKeyQueueIsFull)
{
    Engine engine;
    start (engine, plainCard());
    int taken = 0;
    while (taken < 100000 && engine.key (60, taken % 2 == 0))
        ++taken;
    EXPECT_LT (taken, 100000);
    EXPECT_FALSE (engine.releaseAllKeys());
    renderHeard (engine, 64);
    EXPECT_TRUE (engine.releaseAllKeys());
    EXPECT_FALSE (engine.key (-1, true));
}

TEST (Engine, TakesKeysOfAnEmptyBlock)
{
    Engine engine;
    start (engine, plainCard());
    const KeyEvent event { 0, 60, true };
    engine.process (std::span (&event, 1), {}, 0);
    renderHeard (engine, 640);
    EXPECT_EQ (engine.telemetry().soundingKeys, 1);
}

TEST (Engine, ReportsPeaksOnce)
{
    Engine engine;
    start (engine, plainCard());
    engine.key (60, true);
    renderHeard (engine, second);
    const Telemetry first = engine.telemetry();
    EXPECT_NEAR (first.peakVolts, 0.55, 0.1);
    EXPECT_GT (first.peakFullScale, 0.02);
    EXPECT_GT (first.loadFraction, 0.0);
    EXPECT_NEAR (first.rmsFullScaleDb, -30.0, 1.0);
    EXPECT_NEAR (first.limiterReductionDb, 0.0, 1e-9);
    EXPECT_EQ (engine.telemetry().peakVolts, 0.0);
}

TEST (Engine, LimitsFullChords)
{
    Engine engine;
    start (engine, plainCard());
    engine.setListeningLevelDb (Engine::highestListeningLevelDb);
    for (int key = 36; key <= 96; ++key)
        engine.key (key, true);
    const auto heard = renderHeard (engine, 3 * second);
    EXPECT_LE (peakOf (heard), fromDecibels (ListeningStage::ceilingDb) + 1e-6);
    EXPECT_GT (engine.telemetry().limiterReductionDb, 1.0);
    EXPECT_EQ (engine.telemetry().soundingKeys, 61);
}

TEST (Engine, WritesTheSameToAllChannels)
{
    Engine engine;
    start (engine, plainCard());
    engine.key (60, true);
    std::vector<float> left (1000), right (1000);
    float* const channels[] = { left.data(), right.data() };
    engine.process ({}, channels, 1000);
    EXPECT_EQ (left, right);
    EXPECT_GT (peakOf (std::vector<double> (left.begin(), left.end())), 0.0);
}

} // namespace
} // namespace stopwright

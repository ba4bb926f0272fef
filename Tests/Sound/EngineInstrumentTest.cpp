// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/ClickMeasure.h"
#include "Sound/EngineRun.h"
#include "Sound/TestVoice.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <string>
#include <vector>

namespace stopwright::test
{

namespace
{

constexpr int a3 = 57;
constexpr int lower = 1;

/// The near-sine on the upper manual and one an octave lower on the lower manual.
TestOrgan twoSines()
{
    auto organ = emptyOrgan ({});
    organ.add ("Sine", nearSineCard(), "Upper");
    auto deep = nearSineCard();
    for (Tap& tap : deep.taps)
        tap.footage = Footage::parse ("16");
    organ.add ("Deep", deep, "Lower");
    return organ;
}

void startOrgan (Engine& engine, const TestOrgan& organ, const std::string& inHand = "Sine")
{
    engine.prepare ({ .deviceRateHz = second, .maxFrames = 64 });
    engine.setInstrument (organ.instrument, organ.cards, inHand, true);
    renderHeard (engine, second / 2);
}

double levelDb (Engine& engine)
{
    renderHeard (engine, second / 4);
    return toDecibels (rmsOf (renderHeard (engine, second / 2)));
}

/// How often within a second the level, read every 10 ms, rises through its mean.
int risesPerSecond (Engine& engine)
{
    std::vector<double> levels;
    for (int reading = 0; reading < 100; ++reading)
        levels.push_back (rmsOf (renderHeard (engine, second / 100)));
    const double mean = std::accumulate (levels.begin(), levels.end(), 0.0) / static_cast<double> (levels.size());
    int rises = 0;
    bool isHigh = levels.front() > mean;
    for (const double level : levels)
    {
        // Some way to go either side, so that a steady tone does not rise.
        const bool isNowHigh = level > 1.1 * mean || (isHigh && level > 0.9 * mean);
        rises += isNowHigh && ! isHigh ? 1 : 0;
        isHigh = isNowHigh;
    }
    return rises;
}

} // namespace

// The stop in hand drawn alone: its C4 comes out at the level the engine starts with.
TEST (EngineInstrument, C4OfTheStopInHandIsAtTheListeningLevel)
{
    auto organ = twoSines();
    organ.tablet ("Deep").drawn = false;
    Engine engine;
    startOrgan (engine, organ);
    engine.key (60, true, 0);
    EXPECT_NEAR (levelDb (engine), Engine::startListeningLevelDb, tolerance::audibleDb);
}

TEST (EngineInstrument, KeysOfTheWindowAndChannelsGoToTheirDivisions)
{
    Engine engine;
    startOrgan (engine, twoSines());
    engine.key (a3, true, lower);
    levelDb (engine);
    EXPECT_EQ (engine.telemetry().soundingKeys, 1);
    renderHeard (engine, 640, { { 0, a3, true, Keyboard::ofChannel (2) }, { 0, a3, true, Keyboard::ofChannel (9) } });
    EXPECT_EQ (engine.telemetry().soundingKeys, 1); // the same key again, and a channel that none hears
    engine.key (a3, false, lower);
    renderHeard (engine, 640);
    EXPECT_EQ (engine.telemetry().soundingKeys, 1);
    renderHeard (engine, 640, { { 0, a3, false, Keyboard::ofChannel (2) } });
    EXPECT_EQ (engine.telemetry().soundingKeys, 0);
}

TEST (EngineInstrument, DrawsTurnsAndClosesTheSwell)
{
    auto organ = emptyOrgan ({});
    organ.add ("Square", bareCard(), "Upper");
    Engine engine;
    startOrgan (engine, organ, "Square");
    engine.key (a3, true, 0);
    const double before = levelDb (engine);
    EXPECT_TRUE (engine.turnMixing ("Square", 94e3));
    EXPECT_NEAR (levelDb (engine) - before, -6.02, tolerance::audibleDb);
    EXPECT_TRUE (engine.turnTapLevel ("W", 2.0));
    EXPECT_NEAR (levelDb (engine) - before, 0.0, tolerance::audibleDb);
    engine.setSwell (0.75);
    EXPECT_NEAR (levelDb (engine) - before, -10.0, tolerance::audibleDb);
    engine.setSwell (1.0);
    EXPECT_TRUE (engine.draw ("Square", false));
    EXPECT_LT (levelDb (engine), -100.0);
    EXPECT_FALSE (engine.draw ("None", true));
    EXPECT_FALSE (engine.drawCoupler ("None", true));
    EXPECT_TRUE (engine.switchOutlet ("Main", true));
    EXPECT_FALSE (engine.turn ({ "R99", KnobKind::value }, 1.0));
}

// 1 + d sin raises the mean square by 1 + d^2 / 2, closed form: 1.477 dB at a depth of 0.9.
TEST (EngineInstrument, TurnsDepthAndRateOfATremulant)
{
    auto organ = emptyOrgan ({});
    organ.add ("Sine", nearSineCard(), "Upper");
    organ.instrument.outlets.front().kind = OutletKind::tremulant;
    organ.instrument.outlets.front().tremulant = { .rateHz = 6.0, .depth = 0.0 };
    const auto name = organ.instrument.outlets.front().name;
    Engine engine;
    startOrgan (engine, organ);
    engine.setListeningLevelDb (-40.0);
    engine.key (a3, true, 0);
    const double before = levelDb (engine);
    EXPECT_LT (risesPerSecond (engine), 2);
    EXPECT_TRUE (engine.turnTremulant (name, { .rateHz = 6.0, .depth = 0.9 }));
    EXPECT_NEAR (levelDb (engine) - before, 1.477, tolerance::audibleDb);
    EXPECT_NEAR (risesPerSecond (engine), 6, 1); // one may lie at either end of the second
    EXPECT_TRUE (engine.turnTremulant (name, { .rateHz = 4.0, .depth = 0.9 }));
    levelDb (engine);
    EXPECT_NEAR (risesPerSecond (engine), 4, 1);
    EXPECT_TRUE (engine.draw ("Sine", false)) << "what comes behind the tremulants is still found";
    EXPECT_LT (levelDb (engine), -100.0);
    EXPECT_FALSE (engine.turnTremulant ("None", {}));
    EXPECT_FALSE (engine.turnTremulant (name, { .rateHz = std::nan (""), .depth = 0.5 }));
}

TEST (EngineInstrument, WhatWasDrawnStaysDrawnOnANewDevice)
{
    Engine engine;
    startOrgan (engine, twoSines());
    engine.draw ("Sine", false);
    renderHeard (engine, second / 4);
    engine.prepare ({ .deviceRateHz = 96000.0, .maxFrames = 512 });
    renderHeard (engine, second);
    engine.key (a3, true, 0);
    EXPECT_LT (levelDb (engine), -100.0);
    engine.draw ("Sine", true);
    EXPECT_GT (levelDb (engine), -40.0);
}

TEST (EngineInstrument, LampsReachTheTelemetryOnce)
{
    MixingBus bus;
    bus.rails = SupplyRails { -0.05, 0.05 };
    auto organ = emptyOrgan (bus);
    organ.add ("Sine", nearSineCard(), "Upper");
    Engine engine;
    startOrgan (engine, organ);
    EXPECT_EQ (engine.clipNames(), std::vector<std::string> { "Preamp: Bus" });
    EXPECT_EQ (engine.telemetry().clips, 0U);
    engine.key (a3, true, 0);
    renderHeard (engine, second / 4);
    EXPECT_EQ (engine.telemetry().clips, 1U);
    engine.key (a3, false, 0);
    renderHeard (engine, second / 4);
    engine.telemetry();
    renderHeard (engine, second / 4);
    EXPECT_EQ (engine.telemetry().clips, 0U);
}

// Another instrument, another network in a stop, a card alone and back: each fades in 50 ms while the key is held.
TEST (EngineInstrument, AnotherInstrumentFadesInWithoutAClick)
{
    const auto organ = twoSines();
    auto other = twoSines();
    other.instrument.name = "Other";
    other.instrument.stops.front().mixingOhms = 30e3;
    other.cards.ofStops.front()->parts.push_back (
        { "Rx", { other.cards.ofStops.front()->output, "0" }, Resistor { 1e6 } });
    auto renamed = twoSines();
    renamed.instrument.divisions.front().name = "Swell";
    for (auto& stop : renamed.instrument.stops)
        stop.division = stop.division == "Upper" ? "Swell" : stop.division;

    Engine engine;
    startOrgan (engine, organ);
    engine.key (a3, true, 0);
    renderHeard (engine, second / 2);
    const auto hears = [&engine]
    {
        const auto samples = renderHeard (engine, second / 2);
        EXPECT_EQ (engine.telemetry().soundingKeys, 1);
        return samples;
    };
    auto steady = hears();
    const auto expectSmooth = [&] (const std::string& what)
    {
        auto samples = steady;
        const auto after = hears();
        samples.insert (samples.end(), after.begin(), after.end());
        EXPECT_LT (residueAboveSixKilohertz (samples, second), tolerance::knobResidueDb) << what;
        EXPECT_GT (peakOf (std::span (after).last (4800)), 0.1 * peakOf (steady)) << what;
        steady = after;
    };
    engine.setInstrument (other.instrument, other.cards, "Sine", false);
    expectSmooth ("another network");
    engine.setInstrument (renamed.instrument, renamed.cards, "Sine", false);
    expectSmooth ("other divisions");
    engine.setCard (nearSineCard(), keySourceForCardAlone (nearSineCard()), false);
    expectSmooth ("a card alone");
    engine.setInstrument (organ.instrument, organ.cards, "Sine", false);
    expectSmooth ("the instrument again");
    engine.key (a3, false, 0);
    renderHeard (engine, second / 4);
    EXPECT_EQ (engine.telemetry().soundingKeys, 0);
    EXPECT_LT (levelDb (engine), -100.0);
}

} // namespace stopwright::test

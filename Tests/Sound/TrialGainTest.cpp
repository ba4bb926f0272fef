// SPDX-License-Identifier: GPL-3.0-or-later
//
// The gain that goes with a trial: two cards heard equally loud, flipped without a step.
#include "Sound/Engine.h"

#include "Organ/TestOrgan.h"
#include "Sound/EngineRun.h"
#include "Study/TrialLevels.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <span>
#include <vector>

namespace stopwright::test
{

namespace
{

constexpr int a3 = 57;
constexpr double matchDb = 0.1; ///< what the window promises

/// The near-sine with less of a low-pass and more volts: louder, and 46 degrees ahead at A3.
Card louderTrial()
{
    Card card = nearSineCard();
    card.taps[0].voltsPeakToPeak = 3.0;
    for (Part& part : card.parts)
        if (part.name == "R")
            part.value = Resistor { 10e3 };
    return card;
}

double gainDbOfB (const Card& a, const Card& b)
{
    return TrialLevels::ofCards (a, b, { a3 }, a3).gainDbOfB (LevelMeasure::rms);
}

void flip (Engine& engine, const Card& card, double gainDb)
{
    engine.setCard (card, keySourceForCardAlone (card), false, gainDb);
}

/// Largest second difference: what a kink or a step leaves, where a slow wave has next to none.
double largestBend (std::span<const double> samples)
{
    double largest = 0.0;
    for (std::size_t i = 2; i < samples.size(); ++i)
        largest = std::max (largest, std::abs (samples[i] - 2.0 * samples[i - 1] + samples[i - 2]));
    return largest;
}

std::vector<double> joined (std::vector<double> first, const std::vector<double>& second)
{
    first.insert (first.end(), second.begin(), second.end());
    return first;
}

} // namespace

TEST (TrialGain, MatchedTrialsAreEquallyLoudBeforeAndAfterTheFlip)
{
    const Card a = nearSineCard();
    const Card b = louderTrial();
    const double gainDb = gainDbOfB (a, b);
    Engine engine;
    const double ofA = startPlaying (engine, a, a3);
    flip (engine, b, gainDb);
    renderHeard (engine, second / 5);
    EXPECT_NEAR (steadyDb (engine), ofA, matchDb);
    flip (engine, a, 0.0);
    renderHeard (engine, second / 5);
    EXPECT_NEAR (steadyDb (engine), ofA, matchDb);
    flip (engine, b, 0.0); // the twin: unmatched
    renderHeard (engine, second / 5);
    EXPECT_GT (steadyDb (engine) - ofA, 3.0);
}

// A flip at nine instants of the wave, there and back, against the steady sound of both; joining the two steady sounds
// without a fade is the negative twin.
TEST (TrialGain, TheFlipMakesNoStep)
{
    const Card a = nearSineCard();
    const Card b = louderTrial();
    const double gainDb = gainDbOfB (a, b);
    double worstFade = 0.0;
    double leastJump = 1e9;
    for (const bool toB : { true, false })
        for (int instant = 0; instant < 9; ++instant)
        {
            Engine flipped, staying, other;
            for (Engine* const engine : { &flipped, &staying, &other })
            {
                start (*engine, a);
                flip (*engine, (engine == &other) == toB ? b : a, (engine == &other) == toB ? gainDb : 0.0);
                engine->key (a3, true);
                renderHeard (*engine, second + 24 * instant);
            }
            const auto before = renderHeard (flipped, second / 10);
            const auto jump = joined (renderHeard (staying, second / 10),
                                      [&other]
                                      {
                                          renderHeard (other, second / 10);
                                          return renderHeard (other, second / 10);
                                      }());
            flip (flipped, toB ? b : a, toB ? gainDb : 0.0);
            const auto fade = joined (before, renderHeard (flipped, second / 10));
            const double steady = std::max (largestBend (before), largestBend (renderHeard (flipped, second / 10)));
            worstFade = std::max (worstFade, largestBend (fade) / steady);
            leastJump = std::min (leastJump, largestBend (jump) / steady);
        }
    std::printf ("largest bend re steady sound: fade %.3f, jump at least %.1f\n", worstFade, leastJump);
    EXPECT_LT (worstFade, 1.1);
    EXPECT_GT (leastJump, 2.0);
}

TEST (TrialGain, IsNoPartOfTheReference)
{
    Engine engine;
    const double before = startPlaying (engine, plainCard(), 60);
    engine.setCard (plainCard(), keySourceForCardAlone (plainCard()), true, -6.0);
    renderHeard (engine, second / 5);
    EXPECT_NEAR (steadyDb (engine) - before, -6.0, 0.01);
    engine.setCard (plainCard(), keySourceForCardAlone (plainCard()), false);
    renderHeard (engine, second / 5);
    EXPECT_NEAR (steadyDb (engine) - before, 0.0, 0.01);
}

TEST (TrialGain, StaysWhileKnobsTurnAndWhenTheDeviceChanges)
{
    Engine engine;
    const double before = startPlaying (engine, plainCard(), a3);
    engine.setTrialGainDb (-6.0);
    engine.turnTapLevel ("W1", 4.0);
    renderHeard (engine, second / 10);
    EXPECT_NEAR (steadyDb (engine) - before, toDecibels (2.0) - 6.0, 0.01);
    EXPECT_NEAR (engine.trialGainDb(), -6.0, 1e-9);

    engine.prepare ({ .deviceRateHz = 48000.0, .maxFrames = 64 });
    renderHeard (engine, second / 2);
    engine.key (a3, true);
    renderHeard (engine, second);
    EXPECT_NEAR (steadyDb (engine) - before, toDecibels (2.0) - 6.0, tolerance::audibleDb);
}

// Half way in half of 20 ms, in a straight line; no step on the way.
TEST (TrialGain, ANewGainIsRampedIn)
{
    Engine engine;
    start (engine, nearSineCard());
    engine.key (a3, true);
    renderHeard (engine, second);
    const auto before = renderHeard (engine, second / 10);
    engine.setTrialGainDb (-20.0);
    const auto during = renderHeard (engine, second / 10, {}, 64);
    EXPECT_LT (largestStep (joined (before, during)), 1.05 * largestStep (before));

    const auto rmsAt = [&during] (double seconds)
    {
        constexpr std::size_t period = 218; // of A3
        return rmsOf (std::span (during).subspan (static_cast<std::size_t> (seconds * 48000.0), period));
    };
    const double whole = rmsOf (before);
    EXPECT_GT (rmsAt (0.002), 0.7 * whole);
    EXPECT_LT (rmsAt (0.010), 0.6 * whole);
    EXPECT_NEAR (rmsAt (0.030) / whole, 0.1, 0.01);
}

TEST (TrialGain, OnlyEverLowers)
{
    Engine engine;
    EXPECT_EQ (engine.trialGainDb(), 0.0);
    engine.setTrialGainDb (-6.0); // of nothing
    start (engine, plainCard());
    EXPECT_EQ (engine.trialGainDb(), 0.0);
    engine.setTrialGainDb (12.0);
    EXPECT_EQ (engine.trialGainDb(), 0.0);
    engine.setTrialGainDb (-100.0);
    EXPECT_NEAR (engine.trialGainDb(), Engine::lowestTrialGainDb, 1e-9);
    engine.setTrialGainDb (std::nan (""));
    EXPECT_EQ (engine.trialGainDb(), 0.0);
    flip (engine, plainCard(), 6.0);
    EXPECT_EQ (engine.trialGainDb(), 0.0);
}

// What the card gives is told in its own volts.
TEST (TrialGain, DoesNotTouchTheVoltsOfTheTelemetry)
{
    Engine engine;
    startPlaying (engine, plainCard(), a3);
    engine.telemetry();
    renderHeard (engine, second / 10);
    const double plain = engine.telemetry().peakVolts;
    engine.setTrialGainDb (-20.0);
    renderHeard (engine, second / 10);
    EXPECT_NEAR (engine.telemetry().peakVolts, plain, 0.01 * plain);
}

TEST (TrialGain, GoesWithAWholeInstrumentToo)
{
    auto organ = larkfield();
    Engine engine;
    engine.prepare ({ .deviceRateHz = second, .maxFrames = 64 });
    engine.setInstrument (organ.instrument, organ.cards, "Krummhorn 8", true);
    engine.key (60, true, 0);
    renderHeard (engine, second);
    const double before = steadyDb (engine);
    engine.setInstrument (organ.instrument, organ.cards, "Krummhorn 8", false, -6.0);
    renderHeard (engine, second / 5);
    EXPECT_NEAR (steadyDb (engine) - before, -6.0, 0.05);
}

} // namespace stopwright::test

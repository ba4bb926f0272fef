// SPDX-License-Identifier: GPL-3.0-or-later
//
// Levels that stops on a bus leave each other: what is computed by hand beside what sounds.
#include "Sound/InstrumentVoice.h"

#include "Sound/TestCards.h"
#include "Sound/TestVoice.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

namespace stopwright::test
{

namespace
{

constexpr int upper = 0;
constexpr int a3 = 57;
constexpr int settleFrames = 9600;
constexpr int measuredFrames = 24000;

/// Stops of 47 kilohm on the passive bus of 100 kilohm, the first one drawn on the upper manual and the others on the
/// lower one, where no key is down.
TestOrgan eightOnPassiveBus (WhenRetired whenRetired)
{
    auto organ = emptyOrgan (passiveBus());
    for (int stop = 0; stop < 8; ++stop)
        organ.add ("Stop " + std::to_string (stop), bareCard(), stop == 0 ? "Upper" : "Lower").whenRetired =
            whenRetired;
    return organ;
}

void drawOthers (InstrumentVoice& voice, bool drawn)
{
    for (int stop = 1; stop < 8; ++stop)
        voice.setControl (*voice.findDraw ("Stop " + std::to_string (stop)), drawn ? 1.0 : 0.0);
}

} // namespace

// Kirchhoff's current law: alone 47 k into 100 k gives -3.346 dB, with seven more at rest -18.558 dB, and a stop that
// leaves its resistor grounded changes nothing.
TEST (RailLevels, OpenStopsRobAndGroundedOnesDoNot)
{
    for (const auto whenRetired : { WhenRetired::open, WhenRetired::grounded })
    {
        const bool isOpen = whenRetired == WhenRetired::open;
        const auto organ = eightOnPassiveBus (whenRetired);
        auto voice = voiceOf (organ);
        voice.key (upper, a3, true, 0);
        EXPECT_NEAR (toDecibels (levelNow (voice) / squareVolts), -18.558, 2e-3);
        drawOthers (voice, false);
        EXPECT_NEAR (toDecibels (levelNow (voice) / squareVolts), isOpen ? -3.346 : -18.558, 2e-3);
        drawOthers (voice, true);
        EXPECT_NEAR (toDecibels (levelNow (voice) / squareVolts), -18.558, 2e-3);
    }
}

// A ninth stop on the passive bus costs each of the eight 0.9693 dB, whatever it plays.
TEST (RailLevels, AnAddedStopCostsTheOthers)
{
    auto organ = eightOnPassiveBus (WhenRetired::open);
    organ.add ("Ninth", bareCard(), "Lower").whenRetired = WhenRetired::open;
    auto voice = voiceOf (organ);
    voice.key (upper, a3, true, 0);
    const double nine = levelNow (voice);
    voice.setControl (*voice.findDraw ("Ninth"), 0.0);
    EXPECT_NEAR (toDecibels (nine / levelNow (voice)), -0.9693, 2e-3);
}

// On a virtual earth a mixing resistor alone decides: 47 k turned to 56 k is -1.5218 dB, the neighbour stays.
TEST (RailLevels, AMixingResistorOnAVirtualEarth)
{
    auto organ = emptyOrgan ({});
    organ.add ("One", bareCard(), "Upper");
    organ.add ("Two", bareCard(), "Lower");
    auto voice = voiceOf (organ);
    voice.key (upper, a3, true, 0);
    const double before = levelNow (voice);
    EXPECT_NEAR (toDecibels (before / squareVolts), 0.0, 2e-3);
    voice.setControl (*voice.findMixingKnob ("One"), 56e3);
    EXPECT_NEAR (toDecibels (levelNow (voice) / before), -1.5218, 1e-3);
    voice.setControl (*voice.findMixingKnob ("Two"), 5.6e3);
    EXPECT_NEAR (toDecibels (levelNow (voice) / before), -1.5218, 1e-3);
}

// Two stops of the same wave add as volts, and cancel when one is turned round: never as powers.
TEST (RailLevels, StopsAddAsComplexAmplitudes)
{
    for (const int polarity : { 1, -1 })
    {
        auto organ = emptyOrgan ({});
        organ.add ("One", bareCard(), "Upper");
        organ.add ("Two", bareCard(), "Upper").polarity = polarity;
        auto voice = voiceOf (organ);
        voice.key (upper, a3, true, 0);
        const double level = levelNow (voice);
        if (polarity > 0)
            EXPECT_NEAR (toDecibels (level / squareVolts), 6.0206, 2e-3);
        else
            EXPECT_LT (level, 1e-9);
    }
}

// Unified 8 and 4 ft: C3 and C4 share a generator, so the weights of the octaves are 1, 2, 1 and not those of four notes.
TEST (RailLevels, AUnifiedRankSharesItsGenerators)
{
    auto organ = emptyOrgan ({});
    organ.add ("Eight", bareCard ("8"), "Upper");
    organ.add ("Four", bareCard ("4"), "Upper");
    auto voice = voiceOf (organ);
    voice.key (upper, 48, true, 0);
    voice.key (upper, 60, true, 0);
    renderVoice (voice, settleFrames);
    const auto samples = renderVoice (voice, measuredFrames);
    double sum = 0.0;
    for (const double volts : samples)
        sum += volts * volts;
    // Squares an octave apart are orthogonal: rms of 0.5 V (1, 2, 1), up to 20 kHz.
    EXPECT_NEAR (std::sqrt (sum / measuredFrames), 0.5 * std::sqrt (6.0), 0.01);
}

// A passive keyed bus: 10 k a key into 10 k, so two keys give each (10 + 10) / (10 + 20) of what one gives alone.
TEST (RailLevels, AKeyedBusWithCollectorResistorsSags)
{
    auto organ = emptyOrgan ({});
    KeyedBus bus;
    bus.name = "Square 8";
    bus.collectorOhms = 10e3;
    bus.loadOhms = 10e3;
    organ.instrument.keyedBuses.push_back (bus);
    organ.add ("One", bareCard(), "Upper");
    auto voice = voiceOf (organ);
    voice.key (upper, a3, true, 0);
    const double alone = levelNow (voice);
    EXPECT_NEAR (toDecibels (alone / squareVolts), 0.0, 2e-3);
    voice.key (upper, a3 + 7, true, 0);
    EXPECT_NEAR (levelNow (voice) / alone, 2.0 / 3.0, 1e-3);
    voice.key (upper, a3 + 7, false, 0);
    EXPECT_NEAR (levelNow (voice) / alone, 1.0, 1e-3);
}

} // namespace stopwright::test

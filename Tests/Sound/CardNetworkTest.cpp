// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/CardNetwork.h"

#include "Sound/TestCards.h"
#include "Study/HarmonicTable.h"
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace stopwright
{
namespace
{

using namespace test;

const StreamSpec spec { .deviceRateHz = 48000.0, .maxFrames = 512 };

Part part (const std::string& name, const std::vector<std::string>& nodes, const PartValue& value)
{
    return { .name = name, .nodes = nodes, .value = value };
}

/// A square through an emitter follower on a single 15 V supply, coupled on both sides; without C2 the output is the
/// emitter itself.
Card followerCard (double volts, bool isCoupled = true)
{
    Card card = plainCard();
    card.taps.front().voltsPeakToPeak = volts;
    const auto source = card.taps.front().node;
    card.parts = { part ("V1", { "+", "0" }, Supply { 15.0, 0.0 }),
                   part ("C1", { source, "b" }, Capacitor { 1e-6 }),
                   part ("R1", { "+", "b" }, Resistor { 470e3 }),
                   part ("R2", { "b", "0" }, Resistor { 560e3 }),
                   part ("Q1", { "+", "b", "e" }, Npn { { 1e-14, 200.0, 2.0, 0.0, {} } }),
                   part ("RE", { "e", "0" }, Resistor { 10e3 }) };
    card.output = "e";
    if (! isCoupled)
        return card;
    card.parts.push_back (part ("C2", { "e", "out" }, Capacitor { 10e-6 }));
    card.parts.push_back (part ("RL", { "out", "0" }, Resistor { 4.7e3 }));
    card.output = "out";
    return card;
}

CardVoice makeVoice (const Card& card)
{
    return CardVoice (card, keySourceForCardAlone (card), spec);
}

// A signal of 10 mV bends a follower's emitter current by a thousandth, so that what is heard is the small-signal answer.
TEST (CardNetwork, ASmallSignalSoundsAsTheHarmonicTableSays)
{
    const auto card = followerCard (0.01);
    auto voice = makeVoice (card);
    const auto volts = renderVolts (voice, 96000, { { 0, 69, true } });
    const auto rows = harmonicTable (card, keySourceForCardAlone (card), 69);
    for (const std::size_t n : { 1U, 3U, 9U, 21U })
    {
        const double peak = std::abs (
            windowedPartial (std::span (volts).subspan (24000, 48000), 440.0 * static_cast<double> (n), 48000.0));
        EXPECT_NEAR (toDecibels (peak / rows[n - 1].outputPeakVolts), 0.0, tolerance::audibleDb) << n;
    }
    EXPECT_FALSE (voice.hasFault());
}

// A square of 8 V asks the follower for more than its emitter current can sink. Closed form: with C2 charged to V, the
// emitter falls no lower than V RE / (RE + RL) and the output to -V RL / (RE + RL); C2 charges from the resting volts E
// until the two halves are as large, E + 4 - V = V RL / (RE + RL).
TEST (CardNetwork, ALargeSignalIsCutAsTheCircuitCutsIt)
{
    const auto card = followerCard (8.0);
    auto voice = makeVoice (card);
    const auto volts = renderVolts (voice, 96000, { { 0, 69, true } });
    const double emitterVolts = findOperatingPoint (netlistOf (card)).voltsAt ("e");
    const double share = 4.7 / 14.7;
    const double half = (emitterVolts + 4.0) / (1.0 + share) * share;
    const double peak = std::abs (windowedPartial (std::span (volts).subspan (48000), 440.0, 48000.0));
    // Not in the formula: the base-emitter volts rise by some 20 mV while the follower drives the load up, and the base
    // current charges C1 a little.
    EXPECT_NEAR (peak / (4.0 / std::numbers::pi * half), 1.0, 0.03);
    EXPECT_LT (half, 2.7);
}

TEST (CardNetwork, RestingVoltsAreTakenOff)
{
    auto voice = makeVoice (followerCard (1.0, false));
    EXPECT_LT (peakOf (renderVolts (voice, 4800)), 1e-7);
    EXPECT_GT (peakOf (renderVolts (voice, 4800, { { 0, 60, true } })), 0.4);
}

TEST (CardNetwork, KnobsTurnWhileItSounds)
{
    const auto card = followerCard (1.0);
    auto voice = makeVoice (card);
    renderVolts (voice, 9600, { { 0, 60, true } });
    const auto knob = voice.findKnob ({ "RL", KnobKind::value });
    ASSERT_TRUE (knob);
    EXPECT_FALSE (voice.findKnob ({ "Q1", KnobKind::value }));
    voice.setControl (*knob, 100.0);
    EXPECT_TRUE (voice.controlsMove());
    const auto volts = renderVolts (voice, 9600);
    EXPECT_FALSE (voice.controlsMove());
    EXPECT_FALSE (voice.hasFault());
    EXPECT_LT (peakOf (std::span (volts).subspan (4800)), 0.4);
}

/// A stop that loses its transistor goes on from the same keys, if not from the same charge.
TEST (CardNetwork, VoicesOfBothKindsTakeOverFromEachOther)
{
    auto nonlinear = makeVoice (followerCard (1.0));
    auto again = makeVoice (followerCard (1.0));
    auto linear = makeVoice (plainCard());
    renderVolts (nonlinear, 9600, { { 0, 60, true } });
    again.adopt (nonlinear, again.prepareAdoption (nonlinear).get());
    EXPECT_GT (peakOf (renderVolts (again, 960)), 0.4);
    linear.adopt (nonlinear, linear.prepareAdoption (nonlinear).get());
    EXPECT_GT (peakOf (renderVolts (linear, 960)), 0.4);
    again.adopt (linear, again.prepareAdoption (linear).get());
    EXPECT_GT (peakOf (renderVolts (again, 960)), 0.4);
    again.reset();
    EXPECT_LT (peakOf (renderVolts (again, 960)), 1e-7);
}

} // namespace
} // namespace stopwright

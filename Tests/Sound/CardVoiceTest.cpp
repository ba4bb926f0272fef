// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/CardVoice.h"

#include "Circuit/LinearCircuit.h"
#include "Sound/TestCards.h"
#include "Support/Random.h"
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

namespace stopwright
{
namespace
{

using namespace test;

const StreamSpec spec { .deviceRateHz = 48000.0, .maxFrames = 512 };

CardVoice makeVoice (const Card& card)
{
    return CardVoice (card, keySourceForCardAlone (card), spec);
}

std::vector<KeyEvent> randomEvents (Random& random, int frames)
{
    std::vector<KeyEvent> events (60);
    for (KeyEvent& event : events)
        event = { random.integer (0, frames - 1), random.integer (40, 80), random.chance (0.6) };
    std::ranges::stable_sort (events, {}, &KeyEvent::frameOffset);
    return events;
}

double worstDifference (std::span<const double> a, std::span<const double> b)
{
    double worst = 0.0;
    for (std::size_t i = 0; i < a.size(); ++i)
        worst = std::max (worst, std::abs (a[i] - b[i]));
    return worst;
}

// Square of 1 V peak to peak: partial n is 2 / (pi n) volts. Source: its Fourier series.
TEST (CardVoice, PutsOutExactVolts)
{
    CardVoice voice (plainCard(), keySourceForCardAlone (plainCard()), spec);
    const auto volts = renderVolts (voice, 96000, { { 0, 69, true } });
    const auto steady = std::span (volts).subspan (24000, 48000);
    for (const int n : { 1, 3, 5, 21, 45 })
    {
        const double peak = std::abs (windowedPartial (steady, 440.0 * n, 48000.0));
        EXPECT_NEAR (toDecibels (peak / (2.0 / (std::numbers::pi * n))), 0.0, tolerance::runtimeDb) << "partial " << n;
    }
}

// At this clock a sample is 25003/600 ticks, so the square of divisor N repeats exactly after 600 N samples of 48 kHz, in
// which it makes 25003 cycles: every bin of a transform that long which is no multiple of 25003 is none of its partials.
TEST (CardVoice, PutsOutNothingBesideThePartials)
{
    constexpr std::size_t divisorOfC8 = 478;
    constexpr std::size_t length = 600 * divisorOfC8;
    constexpr std::size_t cycles = 25003;
    KeySource source = keySourceForCardAlone (plainCard());
    source.tuning = Tuning::topOctave (
        2000240.0, { static_cast<int> (divisorOfC8), 451, 426, 402, 379, 358, 338, 319, 301, 284, 268, 253 }, 8, 120);
    source.highestKey = 108;
    CardVoice voice (plainCard(), source, spec);
    renderVolts (voice, 48000, { { 0, 108, true } });
    const auto bins = amplitudes (renderVolts (voice, static_cast<int> (length)));

    double worst = 0.0;
    const double hertzPerBin = spec.deviceRateHz / static_cast<double> (length);
    for (std::size_t bin = 0; static_cast<double> (bin) * hertzPerBin <= 20000.0; ++bin)
        if (bin % cycles != 0 && static_cast<double> (bin) * hertzPerBin >= 20.0)
            worst = std::max (worst, bins[bin]);
    EXPECT_NEAR (bins[cycles], 2.0 / std::numbers::pi, 1e-4);
    EXPECT_LT (toDecibels (worst / bins[cycles]), tolerance::aliasDb);
    std::printf ("worst beside the partials of C8: %.1f dB\n", toDecibels (worst / bins[cycles]));
}

TEST (CardVoice, TurnsTheWaveRoundByPolarity)
{
    Card turned = plainCard();
    turned.taps[0].polarity = -1;
    auto voice = makeVoice (plainCard());
    auto other = makeVoice (turned);
    const auto straight = renderVolts (voice, 4800, { { 0, 60, true } });
    const auto inverse = renderVolts (other, 4800, { { 0, 60, true } });
    for (std::size_t i = 0; i < straight.size(); ++i)
        ASSERT_EQ (straight[i], -inverse[i]);
}

TEST (CardVoice, DoesNotCareHowTheStreamIsCut)
{
    Random random (31);
    for (const Card& card : { plainCard(), otherCard(), nearSineCard() })
    {
        const auto events = randomEvents (random, 12000);
        auto whole = makeVoice (card);
        const auto expected = renderVolts (whole, 12000, events, 12000);
        for (const int block : { 1, 7, 64, 1000 })
        {
            auto cut = makeVoice (card);
            const auto got = renderVolts (cut, 12000, events, block);
            EXPECT_LT (worstDifference (got, expected), 1e-6 * peakOf (expected))
                << card.name << " in blocks of " << block;
        }
    }
}

TEST (CardVoice, TakesAnEventAtItsVeryFrame)
{
    const auto first = [] (int frame)
    {
        auto voice = makeVoice (plainCard());
        const auto volts = renderVolts (voice, 2000, { { frame, 60, true } }, 2000);
        const auto found = std::ranges::find_if (volts, [] (double value) { return std::abs (value) > 1e-4; });
        return static_cast<int> (found - volts.begin());
    };
    const int early = first (500);
    EXPECT_GT (early, 500);
    // The wave differs from frame to frame, so the threshold is met within a frame or two of where it should be.
    EXPECT_NEAR (first (501) - early, 1, 2);
    EXPECT_NEAR (first (737) - early, 237, 3);
}

TEST (CardVoice, IgnoresKeysOutsideTheCompassAndEventsTwice)
{
    auto voice = makeVoice (plainCard());
    auto quiet = renderVolts (voice, 4800, { { 0, 35, true }, { 0, 97, true }, { 0, -5, true }, { 0, 500, true } });
    EXPECT_EQ (peakOf (quiet), 0.0);
    EXPECT_EQ (voice.soundingKeys(), 0);

    renderVolts (voice, 4800, { { 0, 60, true }, { 5, 60, true } });
    EXPECT_EQ (voice.soundingKeys(), 1);
    renderVolts (voice, 4800, { { 0, 60, false } });
    EXPECT_EQ (voice.soundingKeys(), 0);
}

TEST (CardVoice, TakesEventsOutsideTheBlockAtItsEnds)
{
    auto voice = makeVoice (plainCard());
    std::vector<double> volts (64);
    const std::vector<KeyEvent> events { { -100, 60, true }, { 1000, 64, true } };
    voice.process (events, volts);
    EXPECT_EQ (voice.soundingKeys(), 2);
    voice.releaseAllKeys();
    renderVolts (voice, 4800);
    EXPECT_EQ (voice.soundingKeys(), 0);
}

TEST (CardVoice, IsAsFreshAfterReset)
{
    auto voice = makeVoice (otherCard());
    const std::vector<KeyEvent> events { { 10, 60, true }, { 900, 60, false } };
    const auto first = renderVolts (voice, 3000, events);
    voice.reset();
    EXPECT_EQ (renderVolts (voice, 3000, events), first);
}

TEST (CardVoice, FindsKnobsOfPartsAndTaps)
{
    const auto voice = makeVoice (otherCard());
    const auto w1 = voice.findTapLevelKnob ("W1");
    const auto w2 = voice.findTapLevelKnob ("W2");
    const auto r1 = voice.findKnob ({ "R1", KnobKind::value });
    ASSERT_TRUE (w1 && w2 && r1);
    EXPECT_NE (*w1, *w2);
    EXPECT_NE (*w1, *r1);
    EXPECT_NE (*w2, *r1);
    EXPECT_FALSE (voice.findTapLevelKnob ("W3"));
    EXPECT_FALSE (voice.findKnob ({ "R9", KnobKind::value }));
    EXPECT_FALSE (voice.findKnob ({ "R1", KnobKind::position }));
}

TEST (CardVoice, RampsTapLevelsAndParts)
{
    auto voice = makeVoice (plainCard());
    renderVolts (voice, 48000, { { 0, 69, true } });
    voice.setControl (*voice.findTapLevelKnob ("W1"), 4.0);
    EXPECT_TRUE (voice.controlsMove());
    renderVolts (voice, static_cast<int> (LinearCircuit::rampSeconds * 48000.0) + 64);
    EXPECT_FALSE (voice.controlsMove());
    auto loud = renderVolts (voice, 48000);
    EXPECT_NEAR (std::abs (windowedPartial (loud, 440.0, 48000.0)), 4.0 / std::numbers::pi, 1e-4);

    voice.setControl (*voice.findKnob ({ "R1", KnobKind::value }), 30e3);
    renderVolts (voice, 4800);
    loud = renderVolts (voice, 48000);
    EXPECT_NEAR (std::abs (windowedPartial (loud, 440.0, 48000.0)), 2.0 / std::numbers::pi, 1e-4);
}

TEST (CardVoice, IgnoresKnobsThatAreNotThere)
{
    auto voice = makeVoice (plainCard());
    for (const int knob : { -1, 1000 })
        voice.setControl (knob, 1.0);
    voice.setControl (0, std::nan (""));
    EXPECT_FALSE (voice.controlsMove());
}

// A voice of the same card that takes over mid-note is not to be told from the one it took over from.
TEST (CardVoice, GoesOnWhereAnotherStands)
{
    for (const Card& card : { plainCard(), otherCard(), nearSineCard() })
    {
        auto first = makeVoice (card);
        renderVolts (first, 10000 + 17, { { 0, 45, true }, { 3000, 57, true }, { 9990, 64, true } });
        auto second = makeVoice (card);
        second.adopt (first, second.prepareAdoption (first).get());
        const std::vector<KeyEvent> later { { 100, 45, false }, { 200, 70, true } };
        const auto expected = renderVolts (first, 6000, later);
        const auto got = renderVolts (second, 6000, later);
        EXPECT_LT (worstDifference (got, expected), 1e-5 * peakOf (expected)) << card.name;
    }
}

// The twin: without the charge of the network there is a difference to be seen.
TEST (CardVoice, WouldNotGoOnWithoutAdoption)
{
    auto first = makeVoice (nearSineCard());
    renderVolts (first, 10000, { { 0, 45, true } });
    auto second = makeVoice (nearSineCard());
    const auto expected = renderVolts (first, 600);
    EXPECT_GT (worstDifference (renderVolts (second, 600, { { 0, 45, true } }), expected), 0.1 * peakOf (expected));
}

TEST (CardVoice, HoldsTheKeysOfAnotherOnNewTaps)
{
    auto first = makeVoice (plainCard());
    renderVolts (first, 4800, { { 0, 60, true }, { 0, 64, true } });
    auto second = makeVoice (otherCard());
    second.adopt (first, second.prepareAdoption (first).get());
    const auto volts = renderVolts (second, 9600);
    EXPECT_EQ (second.soundingKeys(), 2);
    EXPECT_GT (rmsOf (volts), 0.1);
    renderVolts (second, 9600, { { 0, 60, false }, { 0, 64, false } });
    EXPECT_EQ (second.soundingKeys(), 0);
}

TEST (CardVoice, NoticesANetworkRunningAway)
{
    auto voice = makeVoice (runawayCard());
    renderVolts (voice, 48000, { { 0, 69, true } });
    EXPECT_FALSE (voice.hasFault());
    voice.setControl (*voice.findKnob ({ "Rf", KnobKind::value }), 100e3);
    renderVolts (voice, 48000);
    EXPECT_TRUE (voice.hasFault());

    // A voice that takes over has the keys and the time, not the charge.
    auto next = makeVoice (runawayCard());
    next.adopt (voice, next.prepareAdoption (voice).get());
    const auto volts = renderVolts (next, 48000);
    EXPECT_FALSE (next.hasFault());
    EXPECT_GT (rmsOf (volts), 0.1);
}

TEST (CardVoice, RefusesAnUnsoundNetworkInASentence)
{
    Card card = plainCard();
    card.output = "nowhere";
    EXPECT_THROW (makeVoice (card), Error);
}

} // namespace
} // namespace stopwright

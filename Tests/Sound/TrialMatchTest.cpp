// SPDX-License-Identifier: GPL-3.0-or-later
//
// Two trials that TrialLevels say are matched are measured to be so in the rendered sound.
#include "Study/TrialLevels.h"

#include "Sound/InstrumentVoice.h"
#include "Sound/OutletDelays.h"
#include "Sound/RotarySpeaker.h"
#include "Sound/TestCards.h"
#include "Sound/TestVoice.h"
#include "Study/RotaryMeans.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

namespace stopwright::test
{

namespace
{

constexpr double matchDb = 0.1; ///< what the window promises
constexpr int second = 48000;

struct Case
{
    std::string name;
    std::string inHand;
    std::vector<std::string> beside; ///< drawn with it; every stop when it says "all"
    std::vector<HeldKey> held;
    int seconds = 1;

    friend std::ostream& operator<< (std::ostream& out, const Case& one) { return out << one.name; }
};

std::vector<HeldKey> on (const std::string& division, const std::vector<int>& keys)
{
    std::vector<HeldKey> held;
    for (const int key : keys)
        held.push_back ({ division, key });
    return held;
}

/// Reeds on a bare wire to the main outlet; a flute by the tremulant, which swings; one by the rotary speaker.
std::vector<Case> cases()
{
    const std::string upper = "Upper manual";
    const std::string lower = "Lower manual";
    const std::string reed = "Krummhorn 8";
    const std::string flute = "Open flute 8";
    const std::vector<int> chord { 48, 60, 64, 67, 72 };
    auto everywhere = on (lower, { 48, 55 });
    everywhere.push_back ({ upper, 60 });
    everywhere.push_back ({ upper, 64 });
    everywhere.push_back ({ "Pedal", 36 });
    return { { "AloneC2", reed, {}, on (upper, { 36 }) },
             { "AloneC4", reed, {}, on (upper, { 60 }) },
             { "AloneC6", reed, {}, on (upper, { 84 }) },
             { "AloneChord", reed, {}, on (upper, chord), 3 },
             { "ReedsChord", reed, { "Oboe 8", "String 8" }, on (upper, chord), 3 },
             { "TremulantChord", "Stopped flute 8", {}, on (upper, chord), 3 },
             { "RotaryC3", flute, {}, on (lower, { 48 }), 6 },
             { "RotaryBesideMainC3", flute, { "Diapason 8", "Principal 4" }, on (lower, { 48 }), 6 },
             { "FullC4", reed, { "all" }, on (upper, { 60 }), 6 },
             { "FullChord", reed, { "all" }, on (upper, chord), 6 },
             { "FullOnAllKeyboards", reed, { "all" }, everywhere, 6 } };
}

/// The demonstration organ with these drawn. Without rails: a full chorus would clip, which is not the matter here. The
/// tremulant swings and the rotary speaker runs fast.
TestOrgan organFor (const Case& one)
{
    auto organ = larkfield();
    const bool isFull = ! one.beside.empty() && one.beside.front() == "all";
    for (StopTablet& stop : organ.instrument.stops)
        stop.drawn = isFull || stop.name == one.inHand || std::ranges::find (one.beside, stop.name) != one.beside.end();
    for (Outlet& outlet : organ.instrument.outlets)
        outlet.isOn = true;
    for (MixingBus& bus : organ.instrument.mixingBuses)
        bus.rails.reset();
    for (Preamp& preamp : organ.instrument.preamps)
        for (PreampStage& stage : preamp.stages)
        {
            stage.rails.reset();
            stage.emitterAmps = 0.1; // of the follower: enough to sink anything
        }
    return organ;
}

std::optional<Card>& cardInHand (TestOrgan& organ, const Case& one)
{
    return organ.cards.ofStops[static_cast<std::size_t> (&organ.tablet (one.inHand) - organ.instrument.stops.data())];
}

/// Trial B: the same stop with twice the volts and every capacitor half as large.
Card brighter (Card card)
{
    for (Tap& tap : card.taps)
        tap.voltsPeakToPeak *= 2.0;
    for (Part& part : card.parts)
        if (auto* const capacitor = std::get_if<Capacitor> (&part.value))
            capacitor->farads *= 0.5;
    return card;
}

/// By the mean square under a Hann window, so that beats and turns that are cut off at the ends hardly count.
double renderedRms (TestOrgan organ, const Card& card, const Case& one)
{
    cardInHand (organ, one) = card;
    InstrumentVoice voice (organ.instrument, organ.cards, StreamSpec {});
    const auto& divisions = organ.instrument.divisions;
    for (const HeldKey& held : one.held)
        voice.key (static_cast<int> (std::ranges::find (divisions, held.division, &Division::name) - divisions.begin()),
                   held.key, true, 0);
    renderVoice (voice, second / 2);
    const auto samples = renderVoice (voice, one.seconds * second);
    EXPECT_EQ (voice.takeClips(), 0U);
    double sum = 0.0;
    const auto length = static_cast<double> (samples.size());
    for (std::size_t frame = 0; frame < samples.size(); ++frame)
        sum += samples[frame] * samples[frame]
               * (1.0 - std::cos (2.0 * std::numbers::pi * static_cast<double> (frame) / length));
    return std::sqrt (sum / length);
}

class TrialMatch : public testing::TestWithParam<Case>
{};

TEST_P (TrialMatch, MatchedTrialsAreRenderedEquallyLoud)
{
    const Case& one = GetParam();
    auto organ = organFor (one);
    const Card a = *cardInHand (organ, one);
    const Card b = brighter (a);
    const TrialLevels levels (organ.instrument, organ.cards, one.inHand, outletDelaySeconds (organ.instrument, second));
    const auto comparison = levels.compare (a, b, one.held, {});

    const double ofA = toDecibels (renderedRms (organ, a, one));
    const double ofB = toDecibels (renderedRms (organ, b, one));
    const double left = ofB + comparison.gainDbOfB (LevelMeasure::rms) - ofA - comparison.gainDbOfA (LevelMeasure::rms);
    std::printf ("%-18s: B re A %+.3f dB, matched %+.4f dB; level of A off by %+.4f dB\n", one.name.c_str(), ofB - ofA,
                 left, comparison.levelDbOfA (LevelMeasure::rms) - ofA);
    EXPECT_LT (std::abs (left), matchDb);
    EXPECT_GT (std::abs (ofB - ofA), 3.0 * matchDb); // unmatched they are not
    EXPECT_NEAR (comparison.levelDbOfA (LevelMeasure::rms), ofA, matchDb);
    EXPECT_NEAR (comparison.levelDbOfB (LevelMeasure::rms), ofB, matchDb);
}

INSTANTIATE_TEST_SUITE_P (Larkfield,
                          TrialMatch,
                          testing::ValuesIn (cases()),
                          [] (const auto& one) { return one.param.name; });

} // namespace

// Six seconds of a sine through the rotary speaker at its fast speed: 40 turns of the horn and 34.2 of the drum.
TEST (TrialMatchRotary, MeanPowerIsThatOfTheSpeaker)
{
    const RotarySettings settings;
    const RotaryMeans means (settings);
    for (const double hertz : { 100.0, 400.0, 800.0, 1250.0, 5000.0 })
    {
        RotarySpeaker speaker (settings, true, second);
        std::vector<double> samples (7 * second);
        for (std::size_t frame = 0; frame < samples.size(); ++frame)
            samples[frame] = std::sin (2.0 * std::numbers::pi * hertz * static_cast<double> (frame) / second);
        speaker.process (samples);
        const double measured = toDecibels (rmsOf (std::span (samples).subspan (second)) * std::numbers::sqrt2);
        EXPECT_NEAR (measured, 0.5 * toDecibels (means.power (hertz)), 0.05) << hertz;
    }
}

} // namespace stopwright::test

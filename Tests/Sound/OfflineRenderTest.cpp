// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/OfflineRender.h"

#include "Sound/TestCards.h"
#include "Sound/TestVoice.h"
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stopwright
{
namespace
{

using namespace test;

std::vector<double> rendered (const Card& card, const RenderRequest& request)
{
    std::vector<double> samples;
    EXPECT_TRUE (renderOffline (card, keySourceForCardAlone (card), request,
                                [&] (std::span<const float> block)
                                { samples.insert (samples.end(), block.begin(), block.end()); }));
    return samples;
}

/// What a rendering of an instrument gave.
struct Rendering
{
    std::vector<double> samples;
    std::vector<std::string> clippedStages;
};

Rendering rendered (const TestOrgan& organ, const RenderRequest& request)
{
    Rendering result;
    const auto outcome = renderOffline (organ.instrument, organ.cards, request,
                                        [&] (std::span<const float> block)
                                        { result.samples.insert (result.samples.end(), block.begin(), block.end()); });
    EXPECT_TRUE (outcome);
    result.clippedStages = outcome.clippedStages;
    return result;
}

constexpr int a3 = 57;
constexpr double a3Hz = 220.0;
constexpr int upper = Keyboard::ofDivision (0);

/// Peak volts of a partial from `seconds` on, over 0.4 s.
double partialAt (const std::vector<double>& samples, double seconds, double hertz)
{
    const auto first = static_cast<std::size_t> (seconds * 48000.0);
    return std::abs (windowedPartial (std::span (samples).subspan (first, 19200), hertz, 48000.0));
}

TEST (OfflineRender, HasTheLengthOfThePhrase)
{
    for (const double rateHz : { 44100.0, 48000.0, 96000.0, 192000.0 })
        for (const auto scale : { RenderScale::volts, RenderScale::listening })
            EXPECT_EQ (rendered (plainCard(), { heldKeys ({ 60 }, 0.25), rateHz, scale }).size(),
                       static_cast<std::size_t> (0.25 * rateHz));
    EXPECT_TRUE (rendered (plainCard(), {}).empty());
}

TEST (OfflineRender, WritesVolts)
{
    const auto samples = rendered (plainCard(), { heldKeys ({ 69 }, 1.0), 48000.0, RenderScale::volts });
    const auto steady = std::span (samples).subspan (12000, 33600);
    EXPECT_NEAR (toDecibels (std::abs (windowedPartial (steady, 440.0, 48000.0)) * std::numbers::pi / 2.0), 0.0,
                 tolerance::runtimeDb);
}

TEST (OfflineRender, BeginsWithTheFirstKeyAndNotLate)
{
    for (const auto scale : { RenderScale::volts, RenderScale::listening })
    {
        Phrase phrase { .keys = { { 0.1, 60, true } }, .seconds = 0.3 };
        const auto samples = rendered (plainCard(), { phrase, 48000.0, scale });
        const double peak = peakOf (samples);
        EXPECT_LT (peakOf (std::span (samples).first (4800 - 32)), 1e-3 * peak); // the filter rings a little before
        EXPECT_GT (peakOf (std::span (samples).subspan (4800, 300)), 0.5 * peak);
    }
}

TEST (OfflineRender, ListensAtTheStartLevel)
{
    const auto samples = rendered (plainCard(), { heldKeys ({ 60 }, 2.0), 48000.0, RenderScale::listening });
    EXPECT_NEAR (toDecibels (rmsOf (std::span (samples).subspan (24000, 48000))), -30.0, tolerance::audibleDb);
}

TEST (OfflineRender, TakesKeysInAnyOrder)
{
    Phrase sorted { .keys = { { 0.0, 60, true }, { 0.1, 64, true }, { 0.2, 60, false } }, .seconds = 0.3 };
    Phrase mixed { .keys = { { 0.2, 60, false }, { 0.1, 64, true }, { 0.0, 60, true } }, .seconds = 0.3 };
    EXPECT_EQ (rendered (plainCard(), { sorted, 48000.0 }), rendered (plainCard(), { mixed, 48000.0 }));
}

TEST (OfflineRender, AKeySoundsUntilTheLastChannelLetsGo)
{
    const int other = Keyboard::ofChannel (16);
    Phrase both;
    both.keys = { { 0.0, 60, true }, { 0.1, 60, true, other }, { 0.2, 60, false }, { 0.3, 60, false, other } };
    both.seconds = 0.4;
    Phrase one;
    one.keys = { { 0.0, 60, true }, { 0.3, 60, false } };
    one.seconds = 0.4;
    for (const auto scale : { RenderScale::volts, RenderScale::listening })
        EXPECT_EQ (rendered (plainCard(), { both, 48000.0, scale }), rendered (plainCard(), { one, 48000.0, scale }));
}

TEST (OfflineRender, ReportsProgressAndStops)
{
    double last = -1.0;
    std::size_t frames = 0;
    const auto sink = [&] (std::span<const float> block) { frames += block.size(); };
    const RenderRequest request { heldKeys ({ 60 }, 1.0), 48000.0, RenderScale::volts };
    EXPECT_TRUE (renderOffline (plainCard(), keySourceForCardAlone (plainCard()), request, sink,
                                [&] (double part)
                                {
                                    EXPECT_GE (part, last);
                                    last = part;
                                    return true;
                                }));
    EXPECT_EQ (last, 1.0);
    EXPECT_EQ (frames, 48000U);

    frames = 0;
    EXPECT_FALSE (renderOffline (plainCard(), keySourceForCardAlone (plainCard()), request, sink,
                                 [] (double part) { return part < 0.5; }));
    EXPECT_LT (frames, 26000U);
}

TEST (OfflineRender, RefusesInASentence)
{
    Card unsound = plainCard();
    unsound.output = "nowhere";
    const auto nothing = [] (std::span<const float>) {};
    EXPECT_THROW (renderOffline (unsound, keySourceForCardAlone (unsound), {}, nothing), Error);

    const RenderRequest impossible { heldKeys ({ 60 }, 1.0), 0.0, RenderScale::volts };
    EXPECT_THROW (renderOffline (plainCard(), keySourceForCardAlone (plainCard()), impossible, nothing), Error);

    auto organ = emptyOrgan ({});
    EXPECT_THROW (renderOffline (organ.instrument, organ.cards, impossible, nothing), Error);
    auto broken = bareCard();
    broken.output = "nowhere";
    organ.add ("Broken", broken);
    EXPECT_THROW (renderOffline (organ.instrument, organ.cards, {}, nothing), Error);
}

// On an ideal virtual earth a stop is its card loaded by its mixing resistor, times feedback over mixing: Kirchhoff's
// current law; it inverts. 56 k into 47 k, sample by sample, so that the delay is taken off as the card's is.
TEST (OfflineRender, AStopAloneIsItsCardTimesTheLawOfTheBus)
{
    constexpr double mixingOhms = 56e3;
    constexpr double feedbackOhms = 47e3;
    const Card card = presetCard ("Krummhorn8");
    auto organ = emptyOrgan ({});
    organ.add ("Krummhorn", card, "Upper", "Bus", mixingOhms);
    const auto stop = rendered (organ, { heldKeys ({ 48, a3 }, 1.0, upper), 48000.0 }).samples;

    Card loaded = card;
    loaded.parts.push_back ({ .name = "Load", .nodes = { card.output, "0" }, .value = Resistor { mixingOhms } });
    std::vector<double> expected;
    renderOffline (loaded, keySourceOf (organ.instrument, "Upper", card), { heldKeys ({ 48, a3 }, 1.0), 48000.0 },
                   [&] (std::span<const float> block)
                   {
                       for (const float sample : block)
                           expected.push_back (static_cast<double> (sample) * -feedbackOhms / mixingOhms);
                   });
    ASSERT_EQ (stop.size(), expected.size());
    double largest = 0.0;
    for (std::size_t frame = 0; frame < stop.size(); ++frame)
        largest = std::max (largest, std::abs (stop[frame] - expected[frame]));
    constexpr double hundredthOfADecibel = 1.15e-3;
    EXPECT_LT (largest, hundredthOfADecibel * peakOf (expected));
    EXPECT_GT (peakOf (expected), 0.01);
}

TEST (OfflineRender, AnInstrumentBeginsWithTheFirstKeyAndNotLate)
{
    auto organ = emptyOrgan ({});
    organ.add ("Plain", plainCard());
    for (const auto scale : { RenderScale::volts, RenderScale::listening })
    {
        auto phrase = heldKeys ({ 60 }, 0.3, upper);
        for (auto& key : phrase.keys)
            key.seconds += 0.1;
        const auto samples = rendered (organ, { phrase, 48000.0, scale }).samples;
        EXPECT_EQ (samples.size(), 14400U);
        const double peak = peakOf (samples);
        EXPECT_LT (peakOf (std::span (samples).first (4800 - 32)), 1e-3 * peak); // the filter rings a little before
        EXPECT_GT (peakOf (std::span (samples).subspan (4800, 300)), 0.5 * peak);
    }
}

TEST (OfflineRender, ChannelsPlayTheDivisionsThatHearThem)
{
    auto organ = emptyOrgan ({});
    organ.add ("High", bareCard ("8"), "Upper");
    organ.add ("Deep", bareCard ("16"), "Pedal");
    for (const auto scale : { RenderScale::volts, RenderScale::listening })
    {
        const auto play = [&] (int keyboard) {
            return rendered (organ, { heldKeys ({ a3 }, 0.8, keyboard), 48000.0, scale }).samples;
        };
        const double loud = partialAt (play (Keyboard::ofChannel (1)), 0.3, a3Hz);
        EXPECT_GT (loud, 0.01);
        for (const int keyboard : { Keyboard::ofChannel (3), Keyboard::ofDivision (2) })
        {
            const auto pedal = play (keyboard);
            EXPECT_GT (partialAt (pedal, 0.3, a3Hz / 2.0), 0.9 * loud);
            EXPECT_LT (partialAt (pedal, 0.3, a3Hz), 1e-3 * loud) << "a square at 110 Hz has no second harmonic";
        }
        EXPECT_EQ (peakOf (play (Keyboard::ofChannel (4))), 0.0) << "nobody hears channel 4";
        EXPECT_EQ (peakOf (play (Keyboard::ofDivision (1))), 0.0) << "no stop of the lower manual is drawn";
    }
}

TEST (OfflineRender, TheSwellShoeMovesWithThePhrase)
{
    auto organ = emptyOrgan ({});
    organ.instrument.outlets.front().swellFloorDb = -30.0;
    organ.add ("One", bareCard());
    for (const auto scale : { RenderScale::volts, RenderScale::listening })
    {
        auto phrase = heldKeys ({ a3 }, 1.0, upper);
        const auto open = rendered (organ, { phrase, 48000.0, scale }).samples;
        phrase.swells = { { 0.5, 0.0 }, { 0.0, 0.5 } };
        const auto moved = rendered (organ, { phrase, 48000.0, scale }).samples;
        EXPECT_NEAR (toDecibels (partialAt (moved, 0.05, a3Hz) / partialAt (open, 0.05, a3Hz)), -15.0, 0.01);
        EXPECT_NEAR (toDecibels (partialAt (moved, 0.56, a3Hz) / partialAt (open, 0.56, a3Hz)), -30.0, 0.01);
        // It stands there from the first sample on and does not run from open to half.
        EXPECT_LT (peakOf (std::span (moved).first (1440)), 0.25 * peakOf (std::span (open).first (1440)));
    }
}

TEST (OfflineRender, NamesTheStagesThatClip)
{
    auto organ = emptyOrgan ({});
    PreampStage stage;
    stage.name = "Output";
    stage.gain = 20.0;
    stage.rails = SupplyRails { -6.0, 6.0 };
    PreampStage headroom = stage;
    headroom.name = "Headroom";
    headroom.gain = 1.0;
    organ.instrument.preamps.front().stages = { headroom, stage };
    organ.add ("One", bareCard());
    for (const auto scale : { RenderScale::volts, RenderScale::listening })
    {
        const RenderRequest request { heldKeys ({ a3 }, 0.2, upper), 48000.0, scale };
        EXPECT_EQ (rendered (organ, request).clippedStages, std::vector<std::string> { "Preamp: Output" });
    }
    organ.instrument.preamps.front().stages[1].gain = 2.0;
    EXPECT_TRUE (rendered (organ, { heldKeys ({ a3 }, 0.2, upper), 48000.0 }).clippedStages.empty());
}

TEST (OfflineRender, AnInstrumentIsMeasuredByItsReferenceTablet)
{
    auto organ = emptyOrgan ({});
    organ.add ("Blank", bareCard());
    organ.cards.ofStops[0].reset();
    organ.add ("Loud", bareCard ("8", 2.0)).drawn = false;
    organ.add ("Wish", bareCard ("8", 0.5)).proposed = true;
    organ.add ("Soft", bareCard ("8", 0.1));
    EXPECT_EQ (referenceTablet (organ.instrument, organ.cards), "Wish") << "the first that is drawn and has a card";
    organ.tablet ("Wish").drawn = false;
    EXPECT_EQ (referenceTablet (organ.instrument, organ.cards), "Soft");
    const auto samples = rendered (organ, { heldKeys ({ 60 }, 1.0, upper), 48000.0, RenderScale::listening }).samples;
    EXPECT_NEAR (toDecibels (rmsOf (std::span (samples).subspan (12000, 34000))), -30.0, tolerance::audibleDb);

    organ.tablet ("Soft").drawn = false;
    EXPECT_EQ (referenceTablet (organ.instrument, organ.cards), "Wish") << "the proposed one";
    organ.tablet ("Wish").proposed = false;
    EXPECT_EQ (referenceTablet (organ.instrument, organ.cards), "Loud");
    for (auto& card : organ.cards.ofStops)
        card.reset();
    EXPECT_EQ (referenceTablet (organ.instrument, organ.cards), "");
}

} // namespace
} // namespace stopwright

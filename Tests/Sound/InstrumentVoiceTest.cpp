// SPDX-License-Identifier: GPL-3.0-or-later
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
constexpr int lower = 1;
constexpr int pedal = 2;
constexpr int a3 = 57;
constexpr double a3Hz = 220.0;
constexpr int settleFrames = 9600;

} // namespace

TEST (InstrumentVoiceTest, EachDivisionPlaysItsOwnStops)
{
    auto organ = emptyOrgan ({});
    organ.add ("High", bareCard ("8"), "Upper");
    organ.add ("Deep", bareCard ("16"), "Pedal");
    auto voice = voiceOf (organ);
    voice.key (pedal, a3, true, 0);
    EXPECT_LT (levelNow (voice), 1e-6);
    EXPECT_GT (levelNow (voice, a3Hz / 2.0), 0.5);
    voice.key (pedal, a3, false, 0);
    voice.key (upper, a3, true, 0);
    EXPECT_GT (levelNow (voice), 0.5);
    EXPECT_EQ (voice.soundingKeys(), 1);
    voice.key (lower, a3, true, 0);
    voice.key (7, a3, true, 0);
    voice.key (pedal, 90, true, 0);
    EXPECT_EQ (voice.soundingKeys(), 2);
    voice.releaseAllKeys();
    EXPECT_EQ (voice.soundingKeys(), 0);
}

TEST (InstrumentVoiceTest, HearsTheChannelsOfItsDivisions)
{
    auto organ = emptyOrgan ({});
    const auto voice = voiceOf (organ);
    EXPECT_EQ (voice.divisionOfChannel (1), upper);
    EXPECT_EQ (voice.divisionOfChannel (2), lower);
    EXPECT_EQ (voice.divisionOfChannel (3), pedal);
    EXPECT_EQ (voice.divisionOfChannel (4), -1);
    organ.instrument.divisions[1].midiChannel.reset();
    const auto open = voiceOf (organ);
    EXPECT_EQ (open.divisionOfChannel (2), lower);
    EXPECT_EQ (open.divisionOfChannel (16), lower);
    EXPECT_EQ (open.divisionOfChannel (3), pedal);
}

TEST (InstrumentVoiceTest, CouplersPlayOtherDivisionsAndDoNotChain)
{
    auto organ = emptyOrgan ({});
    organ.instrument.couplers = { { "Lower to upper, octave", "Upper", "Lower", 1, false },
                                  { "Pedal to lower", "Lower", "Pedal", 0, true } };
    organ.add ("Below", bareCard ("8"), "Lower");
    organ.add ("Bass", bareCard ("16"), "Pedal");
    auto voice = voiceOf (organ);
    voice.key (upper, a3, true, 0);
    EXPECT_LT (levelNow (voice, 2.0 * a3Hz), 1e-6);
    voice.setControl (*voice.findCoupler ("Lower to upper, octave"), 1.0);
    EXPECT_GT (levelNow (voice, 2.0 * a3Hz), 0.5);
    EXPECT_LT (levelNow (voice, a3Hz), 1e-6);
    // The octave key and the coupled one are the same key: it sounds until both have let go.
    voice.key (lower, a3 + 12, true, 0);
    voice.setControl (*voice.findCoupler ("Lower to upper, octave"), 0.0);
    EXPECT_GT (levelNow (voice, 2.0 * a3Hz), 0.5);
    voice.key (lower, a3 + 12, false, 0);
    EXPECT_LT (levelNow (voice, 2.0 * a3Hz), 1e-6);
}

namespace
{

/// First frame louder than a hundredth of a volt.
int onset (const std::vector<double>& samples)
{
    return static_cast<int> (std::ranges::find_if (samples, [] (double volts) { return std::abs (volts) > 0.01; })
                             - samples.begin());
}

} // namespace

TEST (InstrumentVoiceTest, ContactsCloseInTheirOrder)
{
    auto organ = emptyOrgan ({});
    organ.instrument.keyer = { KeyerShape::contact, 0.0, 0.0 };
    KeyedBus eight;
    eight.name = "Eight";
    KeyedBus four;
    four.name = "Four";
    four.footage = Footage::parse ("4");
    organ.instrument.keyedBuses = { eight, four };
    organ.instrument.contacts = { { "Four", "Eight" }, 0.005 };
    organ.add ("Eight", bareCard ("8"), "Upper");
    organ.add ("Four", bareCard ("4"), "Upper");
    const auto onsetWith = [&organ] (const std::string& tablet)
    {
        auto voice = voiceOf (organ);
        voice.setControl (*voice.findDraw (tablet == "Eight" ? "Four" : "Eight"), 0.0);
        renderVoice (voice, settleFrames);
        voice.key (upper, 96, true, 10);
        return onset (renderVoice (voice, 4800)) - voice.delayFrames() - 10;
    };
    EXPECT_NEAR (onsetWith ("Four"), 0, 40);
    EXPECT_NEAR (onsetWith ("Eight"), 240, 40);
}

TEST (InstrumentVoiceTest, TheSwellShoeClosesTheOutletsThatFollowIt)
{
    auto organ = emptyOrgan ({});
    organ.instrument.outlets.front().swellFloorDb = -30.0;
    organ.add ("One", bareCard(), "Upper");
    auto voice = voiceOf (organ);
    voice.key (upper, a3, true, 0);
    const double open = levelNow (voice);
    voice.setSwell (0.0);
    EXPECT_NEAR (toDecibels (levelNow (voice) / open), -30.0, 0.01);
    voice.setSwell (0.5);
    EXPECT_NEAR (toDecibels (levelNow (voice) / open), -15.0, 0.01);
}

TEST (InstrumentVoiceTest, LampsSayWhichStageClips)
{
    MixingBus bus;
    bus.rails = SupplyRails { -6.0, 6.0 };
    auto organ = emptyOrgan (bus);
    PreampStage stage;
    stage.name = "Output";
    stage.gain = 20.0;
    stage.rails = SupplyRails { -6.0, 6.0 };
    organ.instrument.preamps.front().stages.push_back (stage);
    organ.add ("One", bareCard(), "Upper");
    auto voice = voiceOf (organ);
    EXPECT_EQ (voice.clipNames(), (std::vector<std::string> { "Preamp: Bus", "Preamp: Output" }));
    renderVoice (voice, settleFrames);
    EXPECT_EQ (voice.takeClips(), 0U);
    voice.key (upper, a3, true, 0);
    renderVoice (voice, settleFrames);
    EXPECT_EQ (voice.takeClips(), 2U); // half a volt into a gain of 20
    voice.key (upper, a3, false, 0);
    renderVoice (voice, settleFrames);
    voice.takeClips();
    renderVoice (voice, settleFrames);
    EXPECT_EQ (voice.takeClips(), 0U);
}

TEST (InstrumentVoiceTest, TheCutIntoPiecesDoesNotMatter)
{
    auto organ = emptyOrgan (passiveBus());
    organ.add ("Reed", presetCard ("Krummhorn8"), "Upper");
    organ.add ("Flute", presetCard ("StoppedFlute8"), "Upper");
    const auto render = [&organ] (int pieceFrames)
    {
        auto voice = voiceOf (organ);
        voice.key (upper, a3, true, 0);
        auto samples = renderVoice (voice, 64 * 63, pieceFrames);
        voice.setControl (*voice.findDraw ("Reed"), 0.0);
        voice.key (upper, a3, false, 0);
        const auto more = renderVoice (voice, 64 * 63, pieceFrames);
        samples.insert (samples.end(), more.begin(), more.end());
        return samples;
    };
    const auto whole = render (64);
    for (const int pieceFrames : { 1, 7, 32, 63 })
    {
        const auto cut = render (pieceFrames);
        double largest = 0.0;
        for (std::size_t frame = 0; frame < whole.size(); ++frame)
            largest = std::max (largest, std::abs (whole[frame] - cut[frame]));
        EXPECT_LT (largest, 1e-6) << pieceFrames;
    }
}

// One voice goes on where the other is: the fade from one into the other must not be heard.
TEST (InstrumentVoiceTest, AnotherVoiceOfTheSameGoesOn)
{
    auto organ = emptyOrgan (passiveBus());
    organ.add ("Reed", presetCard ("Krummhorn8"), "Upper");
    organ.add ("Flute", presetCard ("StoppedFlute8"), "Lower");
    auto first = voiceOf (organ);
    auto second = voiceOf (organ);
    const auto adoption = second.prepareAdoption (first);
    ASSERT_NE (adoption, nullptr);
    first.key (upper, a3, true, 0);
    first.key (lower, a3 + 4, true, 0);
    renderVoice (first, 48000 / 64 * 64 + 13);
    second.adopt (first, adoption.get());
    const auto expected = renderVoice (first, 9600);
    const auto adopted = renderVoice (second, 9600);
    double largest = 0.0;
    for (std::size_t frame = 0; frame < expected.size(); ++frame)
        largest = std::max (largest, std::abs (expected[frame] - adopted[frame]));
    EXPECT_LT (largest, 1e-6);
    EXPECT_EQ (second.soundingKeys(), 2);
    second.releaseAllKeys();
    renderVoice (second, settleFrames);
    EXPECT_LT (peakOf (renderVoice (second, 4800)), 1e-6);
}

TEST (InstrumentVoiceTest, AnInstrumentWithoutBusesHasOneOfItsOwn)
{
    auto organ = emptyOrgan ({});
    organ.add ("One", bareCard(), "Upper");
    organ.instrument.mixingBuses.clear();
    organ.instrument.preamps.clear();
    organ.instrument.outlets.clear();
    organ.cards.ofStages.clear();
    auto voice = voiceOf (organ);
    voice.key (upper, a3, true, 0);
    EXPECT_NEAR (toDecibels (levelNow (voice) / squareVolts), 0.0, 2e-3);
}

TEST (InstrumentVoiceTest, RefusesAStopWithItsName)
{
    auto organ = emptyOrgan ({});
    auto card = bareCard();
    card.output = "nowhere";
    organ.add ("Broken", card, "Upper");
    try
    {
        voiceOf (organ);
        FAIL() << "not refused";
    }
    catch (const Error& error)
    {
        EXPECT_NE (std::string (error.what()).find ("Broken"), std::string::npos) << error.what();
    }
}

TEST (InstrumentVoiceTest, ControlsThatAreNotThereAreIgnored)
{
    auto organ = emptyOrgan ({});
    organ.add ("One", bareCard(), "Upper");
    auto voice = voiceOf (organ);
    EXPECT_FALSE (voice.findDraw ("Two"));
    EXPECT_FALSE (voice.findMixingKnob ("Two"));
    EXPECT_FALSE (voice.findCoupler ("One"));
    EXPECT_FALSE (voice.findKnob ("One", { "R7", KnobKind::value }));
    EXPECT_TRUE (voice.findOutletSwitch ("Main"));
    EXPECT_TRUE (voice.findTapLevelKnob ("One", "W"));
    for (const int control : { -1, voice.controlCount(), 1000000 })
        voice.setControl (control, 1.0);
    voice.setControl (*voice.findMixingKnob ("One"), std::numeric_limits<double>::quiet_NaN());
    EXPECT_FALSE (voice.controlsMove());
}

} // namespace stopwright::test

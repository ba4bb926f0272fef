// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/TrialBar.h"

#include "Bench/BenchFixture.h"
#include "Bench/BlindTestPanel.h"
#include "Units/Decibels.h"

#include <cmath>

namespace stopwright
{

namespace
{

class TrialBarTest : public BenchFixture
{
protected:
    TrialBar& bar() { return view_->sheet().trials(); }

    /// A key of the upper manual, as MIDI.
    void strike (const juce::MidiMessage& message)
    {
        juce::AudioBuffer<float> buffer (2, blockFrames);
        juce::MidiBuffer midi;
        midi.addEvent (message, 0);
        processor_.processBlock (buffer, midi);
        view_->matcher().followKeys();
    }

    void turn (double ohms) { session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, ohms); }
};

} // namespace

TEST_F (TrialBarTest, OneKeyFlipsAtEqualLoudnessByRmsVolts)
{
    openView();
    view_->matcher().setMeasure (LevelMeasure::rms);
    processor_.engine().key (60, true);
    view_->matcher().setKey (60);
    const auto flipKey = juce::KeyPress ('b', {}, 'b');
    ASSERT_TRUE (view_->keyPressed (flipKey)); // B begins
    turn (1e3);
    ASSERT_TRUE (view_->keyPressed (flipKey));
    const double a = settledRms();
    ASSERT_TRUE (view_->keyPressed (flipKey));
    const double b = settledRms();
    EXPECT_NEAR (toDecibels (b / a), 0.0, 0.1);
    EXPECT_TRUE (session_.isSecondTrial());
}

TEST_F (TrialBarTest, TheFirstFlipAfterATurnIsEquallyLoudToo)
{
    openView();
    view_->matcher().setMeasure (LevelMeasure::rms);
    view_->matcher().setKey (60);
    turn (1e3);
    processor_.engine().key (60, true);
    bar().flip(); // B begins
    turn (47e3);  // and is now the louder
    view_->matcher().finish();
    const double b = settledRms();
    bar().flip();
    const double a = settledRms();
    EXPECT_NEAR (toDecibels (b / a), 0.0, 0.1);
    EXPECT_DOUBLE_EQ (processor_.engine().trialGainDb(), 0.0) << "the quieter one is never raised, nor lowered";
    session_.keepTrialInHand();
    EXPECT_DOUBLE_EQ (processor_.engine().trialGainDb(), 0.0);
}

TEST_F (TrialBarTest, AKeyThatIsChosenAfterTheHeldOnesWereLetGoIsCompared)
{
    openView();
    auto& matcher = view_->matcher();
    const auto differenceDb = [&]
    {
        matcher.finish();
        return matcher.comparison()->differenceDb (LevelMeasure::rms);
    };
    bar().flip(); // B begins
    session_.turn ({ CardKnob::Place::part, "C4", KnobKind::value }, 100e-9);
    matcher.setKey (36);
    const double low = differenceDb();
    strike (juce::MidiMessage::noteOn (1, 96, juce::uint8 (100)));
    const double high = differenceDb();
    EXPECT_GT (std::abs (high - low), 1.0) << "C4 takes more from high keys";
    strike (juce::MidiMessage::noteOff (1, 96));
    EXPECT_NEAR (differenceDb(), low, 1e-9) << "the key chosen last";
    matcher.setKey (96);
    EXPECT_NEAR (differenceDb(), high, 1e-9);
    matcher.setKey (36);
    EXPECT_NEAR (differenceDb(), low, 1e-9);
}

TEST_F (TrialBarTest, TrialsAreComparedBeforeThereIsASoundDevice)
{
    BenchProcessor bare;
    BenchSession session (bare);
    KeyHands hands (bare.engine());
    TrialMatcher matcher (session, hands);
    session.open (preset ("LarkfieldOrgan.json"));
    session.beginSecondTrial();
    session.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 1e3);
    session.save();
    session.open (preset ("LarkfieldOrgan.json")); // with trial B from its file
    session.drawOnly ({ "Krummhorn 8" });
    matcher.finish();
    ASSERT_TRUE (matcher.comparison());
    const double difference = matcher.comparison()->differenceDb (LevelMeasure::rms);
    EXPECT_LT (difference, -1.0);
    bare.setPlayConfigDetails (0, 2, rateHz, blockFrames);
    bare.prepareToPlay (rateHz, blockFrames);
    matcher.followKeys();
    matcher.finish();
    ASSERT_TRUE (matcher.comparison());
    EXPECT_NEAR (matcher.comparison()->differenceDb (LevelMeasure::rms), difference, 0.1);
}

TEST_F (TrialBarTest, TellsWhatDiffers)
{
    openView();
    EXPECT_EQ (bar().text(), "");
    bar().flip();
    EXPECT_TRUE (bar().text().contains ("no difference")) << bar().text();
    turn (1e3);
    view_->matcher().finish();
    EXPECT_TRUE (bar().text().contains ("R5 47k / 1k")) << bar().text();
    EXPECT_TRUE (bar().text().contains ("dB(A)")) << bar().text();
}

TEST_F (TrialBarTest, ABlindTestHidesWhatSoundsAndIsKeptInTheNotes)
{
    openView();
    bar().flip();
    turn (1e3);
    BlindTestPanel panel (session_, view_->matcher(), view_->player(), 5);
    BlindTest same (5);
    for (int round = 0; round < 10; ++round)
    {
        panel.listenTo ('X').onClick();
        EXPECT_EQ (session_.isSecondTrial(), same.x() == BlindTest::Trial::b);
        const auto said = same.x();
        panel.say (said == BlindTest::Trial::a ? 'A' : 'B').onClick();
        same.answer (said);
        EXPECT_FALSE (session_.isSecondTrial()); // every round begins from the same sound
    }
    EXPECT_EQ (panel.resultText(), "");
    panel.finish().onClick();
    EXPECT_TRUE (panel.resultText().contains ("10 of 10 right")) << panel.resultText();
    EXPECT_TRUE (panel.resultText().contains ("0.098 %")) << panel.resultText(); // 1 / 1024, exact binomial
    panel.keep().onClick();
    EXPECT_NE (session_.document().pair().a.note.find ("10 of 10 right"), std::string::npos);
    session_.undo();
    EXPECT_EQ (session_.document().pair().a.note.find ("10 of 10 right"), std::string::npos);
}

} // namespace stopwright

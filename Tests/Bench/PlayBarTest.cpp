// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchFixture.h"

namespace stopwright
{

namespace
{

class PlayBarTest : public BenchFixture
{
protected:
    KeyboardStrip& keyboard() { return view_->playBar().keyboard(); }

    void strike (int key)
    {
        const auto area = keyboard().areaOf (key).toNearestInt();
        mousePress (keyboard(), { area.getCentreX(), area.getBottom() - 4 });
        mouseRelease (keyboard(), { area.getCentreX(), area.getBottom() - 4 });
        play (0.05);
    }

    int sounding() { return processor_.engine().telemetry().soundingKeys; }

    bool isShown (int key) { return keyboard().keyAt (keyboard().areaOf (key).getCentre()) == key; }
};

constexpr int upper = 0;
constexpr int lower = 1;
constexpr int pedal = 2;

} // namespace

TEST_F (PlayBarTest, TheKeyboardIsThatOfTheDivision)
{
    openView();
    EXPECT_TRUE (isShown (96));
    view_->playBar().playDivision (pedal);
    EXPECT_TRUE (isShown (65));
    EXPECT_FALSE (isShown (66)); // C2 to F4
    view_->playBar().playDivision (upper);
    EXPECT_TRUE (isShown (96));
}

TEST_F (PlayBarTest, TheKeyboardFollowsTheStopInHand)
{
    openView();
    session_.chooseStop (stop ("Sub bass 16"));
    EXPECT_FALSE (isShown (66));
    session_.chooseStop (stop ("Trumpet 8"));
    EXPECT_TRUE (isShown (96));
}

TEST_F (PlayBarTest, HeldKeysOfOneDivisionStayWhileAnotherIsPlayed)
{
    openView();
    view_->playBar().setHold (true);
    strike (60);
    view_->playBar().playDivision (lower);
    strike (48);
    EXPECT_EQ (sounding(), 2);
    EXPECT_GT (settledRms (0.1), 1e-4); // of the upper manual, where a stop is drawn
    strike (48);
    EXPECT_EQ (sounding(), 1);
    view_->playBar().playDivision (upper);
    strike (60);
    play (0.05);
    EXPECT_EQ (sounding(), 0);
}

TEST_F (PlayBarTest, AllKeysOffLetsEveryDivisionAndMidiGo)
{
    openView();
    view_->playBar().setHold (true);
    strike (60);
    view_->playBar().playDivision (lower);
    strike (48);
    juce::AudioBuffer<float> buffer (2, blockFrames);
    juce::MidiBuffer midi;
    midi.addEvent (juce::MidiMessage::noteOn (3, 40, juce::uint8 (90)), 0);
    processor_.processBlock (buffer, midi);
    play (0.05);
    EXPECT_EQ (sounding(), 3);
    view_->playBar().allOff();
    play (0.05);
    EXPECT_EQ (sounding(), 0);
    EXPECT_FALSE (processor_.isMidiKeyDown (40));
}

TEST_F (PlayBarTest, TheSwellShoeMovesWithKeysMouseAndMidi)
{
    auto& swell = openView().playBar().swell();
    auto& engine = processor_.engine();
    EXPECT_EQ (engine.swell(), 1.0);
    swell.keyPressed (juce::KeyPress (juce::KeyPress::downKey));
    EXPECT_NEAR (engine.swell(), 0.95, 1e-9);
    mousePress (swell, { swell.getWidth() - 3, swell.getHeight() / 2 });
    mouseRelease (swell, { swell.getWidth() - 3, swell.getHeight() / 2 });
    EXPECT_EQ (engine.swell(), 1.0);
    mouseWheel (swell, { swell.getWidth() / 2, swell.getHeight() / 2 }, -1.0f);
    EXPECT_NEAR (engine.swell(), 0.95, 1e-9);

    engine.setSwell (0.25);
    view_->tick();
    EXPECT_EQ (swell.getDescription(), "25 %");
}

TEST_F (PlayBarTest, ACardAloneHasNeitherDivisionsNorSwell)
{
    openView();
    EXPECT_TRUE (view_->playBar().swell().isVisible());
    session_.open (preset ("Oboe8.json"));
    EXPECT_FALSE (view_->playBar().swell().isVisible());
    strike (60);
    EXPECT_TRUE (isShown (60));
}

} // namespace stopwright

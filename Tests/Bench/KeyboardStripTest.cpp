// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchFixture.h"

#include "Bench/KeyRepeat.h"

namespace stopwright
{

namespace
{

class KeyboardStripTest : public BenchFixture
{
protected:
    juce::Point<int> placeOf (int key)
    {
        const auto area = keyboard().areaOf (key).toNearestInt();
        return { area.getCentreX(), area.getBottom() - 4 };
    }

    KeyboardStrip& keyboard() { return view_->playBar().keyboard(); }

    bool sounds() { return settledRms (0.1) > 1e-4; }
};

} // namespace

TEST_F (KeyboardStripTest, ShowsTheRealCompass)
{
    openView();
    EXPECT_EQ (keyboard().keyAt (keyboard().areaOf (36).getCentre().translated (0.0f, 30.0f)), 36);
    EXPECT_EQ (keyboard().keyAt (keyboard().areaOf (96).getCentre()), 96);
    EXPECT_EQ (keyboard().keyAt (keyboard().areaOf (61).getCentre()), 61);
    EXPECT_LE (keyboard().areaOf (96).getRight(), static_cast<float> (keyboard().getWidth()));
    EXPECT_EQ (keyboard().keyAt ({ -5.0f, 10.0f }), -1);
}

TEST_F (KeyboardStripTest, AKeyUnderTheMouseSoundsWhileItIsPressed)
{
    openView();
    EXPECT_FALSE (sounds());
    mousePress (keyboard(), placeOf (60));
    EXPECT_TRUE (sounds());
    mouseRelease (keyboard(), placeOf (60));
    EXPECT_FALSE (sounds());
}

TEST_F (KeyboardStripTest, SlidingPlaysTheNextKeyAndLeavesTheLast)
{
    openView();
    mousePress (keyboard(), placeOf (60));
    play (0.05);
    mouseDragTo (keyboard(), placeOf (64));
    play (0.05);
    EXPECT_EQ (processor_.engine().telemetry().soundingKeys, 1);
    EXPECT_EQ (view_->readings().key(), 64);
    mouseRelease (keyboard(), placeOf (64));
}

TEST_F (KeyboardStripTest, HoldKeepsAKeyUntilItIsStruckAgain)
{
    openView();
    view_->playBar().setHold (true);
    for (const int key : { 60, 64 })
    {
        mousePress (keyboard(), placeOf (key));
        mouseRelease (keyboard(), placeOf (key));
    }
    play (0.1);
    EXPECT_EQ (processor_.engine().telemetry().soundingKeys, 2);
    mousePress (keyboard(), placeOf (60));
    mouseRelease (keyboard(), placeOf (60));
    play (0.2);
    EXPECT_EQ (processor_.engine().telemetry().soundingKeys, 1);
    view_->playBar().setHold (false);
    EXPECT_FALSE (sounds());
}

TEST_F (KeyboardStripTest, AHeldKeySoundsOnWhenTheDeviceChanges)
{
    openView();
    view_->playBar().setHold (true);
    mousePress (keyboard(), placeOf (60));
    mouseRelease (keyboard(), placeOf (60));
    EXPECT_TRUE (sounds());
    processor_.prepareToPlay (rateHz, 2 * blockFrames);
    view_->tick();
    EXPECT_TRUE (sounds());
}

TEST_F (KeyboardStripTest, AllKeysOffLetsEverythingGo)
{
    openView();
    view_->playBar().setHold (true);
    mousePress (keyboard(), placeOf (60));
    mouseRelease (keyboard(), placeOf (60));
    EXPECT_TRUE (sounds());
    view_->keyPressed (juce::KeyPress (juce::KeyPress::escapeKey));
    EXPECT_FALSE (sounds());
}

TEST_F (KeyboardStripTest, MidiKeysAreShownAndTheirHarmonicsDrawn)
{
    openView();
    juce::AudioBuffer<float> buffer (2, blockFrames);
    juce::MidiBuffer midi;
    midi.addEvent (juce::MidiMessage::noteOn (1, 67, juce::uint8 (90)), 0);
    processor_.processBlock (buffer, midi);
    view_->tick();
    EXPECT_EQ (view_->readings().key(), 67);
    EXPECT_TRUE (processor_.isMidiKeyDown (67));
}

TEST_F (KeyboardStripTest, TheDisplayRepeatsAHeldKeyAsPressesAlone)
{
    openView();
    EXPECT_TRUE (askForDetectableKeyRepeat());
}

TEST (TypingKeys, TheRowOfAPlaysFromItsOctave)
{
    Engine engine;
    KeyHands hands (engine);
    TypingKeys typing (hands);
    EXPECT_EQ (typing.characterFor (60), 'a');
    EXPECT_EQ (typing.characterFor (61), 'w');
    EXPECT_EQ (typing.characterFor (72), 'k');
    EXPECT_EQ (typing.characterFor (59), '\0');
    typing.takeOctaveKey (juce::KeyPress ('m', {}, 'm'));
    EXPECT_EQ (typing.characterFor (72), 'a');
    typing.setCompass (36, 65); // a pedalboard: C2 to F4
    EXPECT_EQ (typing.base(), 60);
    EXPECT_FALSE (typing.takeOctaveKey (juce::KeyPress ('q', {}, 'q')));
}

} // namespace stopwright

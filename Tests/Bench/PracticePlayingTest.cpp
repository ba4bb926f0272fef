// SPDX-License-Identifier: GPL-3.0-or-later
//
// Demonstration, scale and full chord in the window: each in one click or key, and all stopped by one.
#include "Bench/BenchFixture.h"

namespace stopwright
{

namespace
{

class PracticePlayingTest : public BenchFixture
{
protected:
    PhraseBar& bar() { return view_->playBar().phrase(); }

    PlayerActions& player() { return view_->player(); }

    int sounding() { return processor_.engine().telemetry().soundingKeys; }

    void press (int code, juce::ModifierKeys modifiers = {}) { view_->keyPressed ({ code, modifiers, 0 }); }

    /// Whether the keyboard in the window paints a key as held.
    bool isShownDown (int key)
    {
        auto& keyboard = view_->playBar().keyboard();
        view_->tick();
        const auto place = keyboard.areaOf (key).toNearestInt();
        const auto picture = keyboard.createComponentSnapshot (keyboard.getLocalBounds());
        return picture.getPixelAt (place.getX() + 3, place.getBottom() - place.getHeight() / 3)
               == Palette::day().result;
    }
};

constexpr int pedal = 2;

} // namespace

TEST_F (PracticePlayingTest, TheDemonstrationIsOneClickAway)
{
    openView();
    EXPECT_TRUE (bar().demonstration().isVisible());
    bar().demonstration().onClick();
    EXPECT_TRUE (player().isPlaying());
    EXPECT_GT (settledRms (1.0), 1e-4);
    EXPECT_TRUE (view_->messages().sentence().isEmpty()) << view_->messages().sentence();
}

TEST_F (PracticePlayingTest, TheScalePlaysTheCompassOfTheDivisionInHand)
{
    openView();
    bar().scale().onClick();
    play (0.1);
    EXPECT_EQ (sounding(), 1);
    EXPECT_TRUE (isShownDown (36));
    play (0.25);
    EXPECT_FALSE (isShownDown (36));
    view_->tick();
    EXPECT_EQ (bar().positionText(), "0:00 of 0:15"); // 61 keys, four a second

    view_->playBar().playDivision (pedal);
    bar().scale().onClick();
    play (0.1);
    view_->tick();
    EXPECT_EQ (bar().positionText(), "0:00 of 0:07"); // 30 pedals
    EXPECT_TRUE (isShownDown (36));
}

TEST_F (PracticePlayingTest, TheFullChordHoldsTenKeys)
{
    openView();
    bar().chord().onClick();
    play (0.3);
    EXPECT_EQ (sounding(), 10);
    for (const int key : { 36, 43, 48, 52, 55, 60, 64, 67, 72, 76 })
        EXPECT_TRUE (isShownDown (key)) << key;
    EXPECT_FALSE (isShownDown (50));
    play (4.0);
    EXPECT_EQ (sounding(), 0);
    view_->tick();
    EXPECT_TRUE (player().isPlaying()) << "the rest belongs to it";
    play (1.0);
    EXPECT_FALSE (player().isPlaying());
}

TEST_F (PracticePlayingTest, AKeyThatAHandHoldsStaysWhenTheScaleHasPassedIt)
{
    openView();
    processor_.engine().key (38, true, 0);
    player().playScale (0);
    play (1.5);
    EXPECT_EQ (sounding(), 2) << "the held key, and one of the scale";
    player().stop();
    play (0.1);
    EXPECT_EQ (sounding(), 1);
}

TEST_F (PracticePlayingTest, FunctionKeysPlayAndEscapeStops)
{
    openView();
    for (const int code : { juce::KeyPress::F5Key, juce::KeyPress::F6Key, juce::KeyPress::F7Key })
    {
        press (code);
        play (0.2);
        EXPECT_TRUE (player().isPlaying());
        press (juce::KeyPress::escapeKey);
        EXPECT_FALSE (player().isPlaying());
        play (0.1);
        EXPECT_EQ (sounding(), 0);
    }
}

TEST_F (PracticePlayingTest, TheLastPieceIsPlayedAgain)
{
    openView();
    press (juce::KeyPress::F7Key);
    play (0.1);
    press ('p', juce::ModifierKeys::commandModifier);
    EXPECT_FALSE (player().isPlaying());
    press ('p', juce::ModifierKeys::commandModifier);
    play (0.1);
    EXPECT_EQ (sounding(), 10);
}

TEST_F (PracticePlayingTest, WhilePlayingStopAndLoopStandInTheirPlace)
{
    openView();
    bar().chord().grabKeyboardFocus();
    bar().chord().onClick();
    play (0.1);
    view_->tick();
    EXPECT_FALSE (bar().chord().isVisible());
    EXPECT_EQ (bar().button().getButtonText(), "Stop");
    EXPECT_TRUE (bar().button().hasKeyboardFocus (false)) << "the keyboard is not lost with the button that had it";
    EXPECT_TRUE (bar().loop().isVisible());
    bar().button().onClick();
    view_->tick();
    EXPECT_TRUE (bar().chord().isVisible());
    EXPECT_FALSE (bar().loop().isVisible());
}

TEST_F (PracticePlayingTest, ACardAloneIsPlayedOverItsOwnCompass)
{
    session_.open (preset ("Oboe8.json"));
    openView();
    press (juce::KeyPress::F7Key);
    play (0.2);
    EXPECT_EQ (sounding(), 10);
}

TEST_F (PracticePlayingTest, WithNothingOpenASentenceSaysWhatToDo)
{
    BenchSession empty { processor_ };
    view_ = std::make_unique<BenchView> (empty, *settings_, nullptr);
    press (juce::KeyPress::F6Key);
    EXPECT_EQ (view_->messages().sentence(), "There is nothing to play on; open a card or an instrument first.");
    press (juce::KeyPress::F5Key);
    EXPECT_EQ (view_->messages().sentence(), "There is nothing to play on; open a card or an instrument first.");
    view_.reset();
}

} // namespace stopwright

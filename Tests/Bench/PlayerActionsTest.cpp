// SPDX-License-Identifier: GPL-3.0-or-later
//
// Playing MIDI files in the window: what can be played and what cannot, the controls, the keys.
#include "Bench/BenchFixture.h"
#include "Command/MidiBuilder.h"

#include <fstream>

namespace stopwright
{

using namespace midi;

namespace
{

class PlayerActionsTest : public BenchFixture
{
protected:
    juce::File write (const std::string& name, const std::string& content)
    {
        std::ofstream (preset (name), std::ios::binary) << content;
        return juce::File (preset (name).string());
    }

    /// C4 on channel 1 for a second (96 ticks at 120 quarters a minute are half a second), then a second of silence.
    juce::File oneNote()
    {
        return write ("one.mid", header (0, 1, 96)
                                     + chunk ("MTrk", bytes ({ 0, 0x90, 60, 90, 0x81, 0x40, 0x80, 60, 0, 0x81, 0x40,
                                                               0xFF, 0x2F, 0 })));
    }

    PhraseBar& bar() { return view_->playBar().phrase(); }

    PlayerActions& player() { return view_->player(); }

    juce::String sentence() { return view_->messages().sentence(); }

    int sounding() { return processor_.engine().telemetry().soundingKeys; }

    void press (int code, juce::ModifierKeys modifiers = {}) { view_->keyPressed ({ code, modifiers, 0 }); }

    juce::File demonstration() { return juce::File (preset ("DemonstrationPhrase.mid").string()); }
};

} // namespace

TEST_F (PlayerActionsTest, AFilePlaysAndTellsHowFarItIs)
{
    openView();
    EXPECT_TRUE (bar().positionText().isEmpty());
    EXPECT_EQ (bar().button().getButtonText(), "Play");
    EXPECT_TRUE (player().playNow (oneNote()));
    play (0.5);
    view_->tick();
    EXPECT_EQ (sounding(), 1);
    EXPECT_EQ (bar().positionText(), "0:00 of 0:02"); // to the end of the file, not of the last note
    EXPECT_EQ (bar().button().getButtonText(), "Stop");
    EXPECT_TRUE (bar().loop().isVisible());
    play (1.0);
    view_->tick();
    EXPECT_EQ (bar().positionText(), "0:01 of 0:02");
    EXPECT_EQ (sounding(), 0);
    play (1.0);
    view_->tick();
    EXPECT_TRUE (bar().positionText().isEmpty());
    EXPECT_EQ (bar().button().getButtonText(), "Play");
    EXPECT_TRUE (sentence().isEmpty());
}

TEST_F (PlayerActionsTest, FilesThatCannotBePlayedAreRefusedInASentence)
{
    openView();
    EXPECT_FALSE (player().playNow (juce::File (preset ("missing.mid").string())));
    EXPECT_TRUE (sentence().contains ("missing.mid")) << sentence();
    EXPECT_TRUE (sentence().contains ("Choose another MIDI file")) << sentence();

    EXPECT_FALSE (player().playNow (write ("text.mid", "no music")));
    EXPECT_TRUE (sentence().contains ("MThd")) << sentence();
    EXPECT_FALSE (player().playNow (write ("cut.mid", header (0, 1, 96) + "MTrk")));
    EXPECT_TRUE (sentence().contains ("cut off")) << sentence();
    EXPECT_FALSE (player().playNow (write ("other.mid", header (0, 1, 96) + track (bytes ({ 0, 0x98, 60, 90 })))));
    EXPECT_TRUE (sentence().contains ("no division hears channel 9")) << sentence();
    EXPECT_FALSE (player().isPlaying());

    EXPECT_TRUE (player().playNow (oneNote()));
    EXPECT_TRUE (sentence().isEmpty()) << "what was said about another file goes";
    EXPECT_FALSE (player().playNow (write ("text.mid", "no music")));
    EXPECT_TRUE (player().isPlaying()) << "what plays goes on";
}

TEST_F (PlayerActionsTest, WhatIsLeftOutIsSaid)
{
    openView();
    const auto notes = track (bytes ({ 0, 0x90, 60, 90, 0, 0x90, 20, 90, 96, 0x80, 60, 0 }));
    EXPECT_TRUE (player().playNow (write ("low.mid", header (0, 1, 96) + notes)));
    EXPECT_TRUE (sentence().contains ("1 of 2 notes lie outside")) << sentence();
}

TEST_F (PlayerActionsTest, OneKeyStopsAndPlaysAgain)
{
    openView();
    player().playNow (oneNote());
    processor_.engine().key (72, true, 0);
    play (0.2);
    EXPECT_EQ (sounding(), 2);
    press ('p', juce::ModifierKeys::commandModifier);
    play (0.1);
    EXPECT_EQ (sounding(), 1) << "the key of the window stays";
    press ('p', juce::ModifierKeys::commandModifier);
    play (0.1);
    EXPECT_EQ (sounding(), 2);
    bar().refresh();
    bar().button().onClick();
    play (0.1);
    EXPECT_EQ (sounding(), 1);
    EXPECT_FALSE (player().isPlaying());
}

TEST_F (PlayerActionsTest, EscapeAPageAndAnotherDocumentStopIt)
{
    openView();
    player().playNow (oneNote());
    play (0.1);
    press (juce::KeyPress::escapeKey);
    EXPECT_FALSE (player().isPlaying());
    player().playNow (oneNote());
    play (0.1);
    view_->showCautions (false);
    EXPECT_FALSE (player().isPlaying());
    view_->closePage();

    player().playNow (oneNote());
    play (0.1);
    session_.open (preset ("Oboe8.json"));
    EXPECT_FALSE (player().isPlaying());
    play (0.3);
    EXPECT_EQ (sounding(), 0);
    press ('p', juce::ModifierKeys::commandModifier); // the last file, on the card
    play (0.1);
    EXPECT_EQ (sounding(), 1);
}

TEST_F (PlayerActionsTest, AnotherStopInHandDoesNotStopIt)
{
    openView();
    player().playNow (oneNote());
    play (0.1);
    session_.chooseStop (stop ("Oboe 8"));
    EXPECT_TRUE (player().isPlaying());
    play (0.1);
    EXPECT_EQ (sounding(), 1);
}

TEST_F (PlayerActionsTest, TheLoopSwitchPlaysItAgain)
{
    openView();
    player().playNow (oneNote());
    play (0.1);
    view_->tick();
    bar().loop().setToggleState (true, juce::sendNotification);
    EXPECT_TRUE (processor_.deck().isLoop());
    play (2.0);
    EXPECT_TRUE (player().isPlaying());
    EXPECT_EQ (sounding(), 1);
    bar().loop().setToggleState (false, juce::sendNotification);
    play (2.0);
    EXPECT_FALSE (player().isPlaying());
}

TEST_F (PlayerActionsTest, TheFileOfTheCommandLineWaitsForTheCautions)
{
    openView();
    view_->playOnceSounding (oneNote());
    view_->begin();
    EXPECT_TRUE (view_->isPageUp());
    play (0.1);
    EXPECT_FALSE (player().isPlaying());
    settings_->acknowledgeCautions();
    view_->closePage();
    view_->begin();
    EXPECT_TRUE (player().isPlaying());
    EXPECT_TRUE (player().playNow (demonstration())); // and others may follow
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
//
// The audio set-up, on a computer that may have neither sound nor MIDI.
#include "Bench/AudioPage.h"
#include "Bench/BenchFixture.h"

namespace stopwright
{

namespace
{

class AudioPageTest : public BenchFixture
{
protected:
    AudioHost audio_ { processor_ };
};

} // namespace

TEST_F (AudioPageTest, EachMidiInputCanBeHeardOrNot)
{
    AudioPage page (audio_);
    page.setSize (600, AudioPage::heightWanted());
    juce::StringArray told { "nothing yet" };
    page.onMidiChosen = [&] (const juce::StringArray& unheard) { told = unheard; };
    page.showInputs ({ "Upper keyboard", "Pedalboard" });
    ASSERT_EQ (page.inputs().size(), 2U);
    EXPECT_TRUE (page.inputs()[1]->getToggleState()) << "all are heard at first";

    page.inputs()[1]->setToggleState (false, juce::sendNotificationSync);
    EXPECT_EQ (told, juce::StringArray { "Pedalboard" });
    EXPECT_EQ (audio_.unheardMidi(), juce::StringArray { "Pedalboard" });

    page.showInputs ({ "Pedalboard" });
    EXPECT_FALSE (page.inputs()[0]->getToggleState()) << "the choice stays when others are pulled out";
    page.inputs()[0]->setToggleState (true, juce::sendNotificationSync);
    EXPECT_TRUE (told.isEmpty());
}

TEST_F (AudioPageTest, AsManyInputsAsHaveRoomAreShown)
{
    AudioPage page (audio_);
    page.setSize (600, AudioPage::heightWanted());
    juce::StringArray names;
    for (int number = 1; number <= AudioPage::mostInputs + 4; ++number)
        names.add ("Input " + juce::String (number));
    page.showInputs (names);
    EXPECT_EQ (static_cast<int> (page.inputs().size()), AudioPage::mostInputs);
    for (const auto& input : page.inputs())
        EXPECT_TRUE (page.getLocalBounds().contains (input->getBounds())) << input->getButtonText();
}

TEST_F (AudioPageTest, TheChoiceOfInputsLastsFromOneRunToTheNext)
{
    settings_->setUnheardMidi ({ "Pedalboard", "Wind, wire & \"co\"" });
    view_ = std::make_unique<BenchView> (session_, *settings_, &audio_);
    EXPECT_EQ (audio_.unheardMidi(), (juce::StringArray { "Pedalboard", "Wind, wire & \"co\"" }));
    view_.reset();
}

TEST_F (AudioPageTest, WithoutADeviceItSaysWhyAndOffersToGoOn)
{
    const auto sentence = AudioHost::noDeviceSentence();
    for (const auto* word : { "JACK", "ALSA", "sound card", "Try again", "go on silent" })
        EXPECT_TRUE (sentence.contains (word)) << word;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/AudioPage.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr float rowHeight = 36.0f;
constexpr float rowGap = 3.0f;
constexpr float inputHeight = 26.0f;
constexpr float labelWidth = 120.0f;
constexpr int refreshMs = 1000;

} // namespace

AudioPage::AudioPage (AudioHost& host) : host_ (host)
{
    system_.setTitle ("Sound system");
    system_.setTooltip (
        "Sound system: JACK, a server that several programs share at a short delay; or ALSA, straight to a sound card, which "
        "no other program can use meanwhile.");
    output_.setTitle ("Output");
    output_.setTooltip ("The sound card or server output that the bench plays on, on all its channels the same.");
    system_.addItemList (host_.systems(), 1);
    if (host_.currentSystem().isNotEmpty())
        system_.setText (host_.currentSystem(), juce::dontSendNotification);
    else
        system_.setSelectedItemIndex (0, juce::dontSendNotification);
    system_.onChange = [this] { fillOutputs(); };
    output_.onChange = [this] { choose(); };
    output_.setTextWhenNoChoicesAvailable ("none found");
    output_.setTextWhenNothingSelected ("choose an output");
    addAndMakeVisible (system_);
    addAndMakeVisible (output_);
    fillOutputs();
    output_.setText (host_.currentOutput(), juce::dontSendNotification);
    showInputs (host_.midiInputs());
    startTimer (refreshMs);
}

int AudioPage::heightWanted()
{
    return 2 * Lettering::px (rowHeight + rowGap) + (mostInputs + 1) * Lettering::px (inputHeight);
}

void AudioPage::showInputs (const juce::StringArray& names)
{
    if (names == names_)
        return;
    names_ = names;
    inputs_.clear();
    for (const auto& name : names_)
    {
        if (static_cast<int> (inputs_.size()) == mostInputs)
            break;
        auto& input = *inputs_.emplace_back (std::make_unique<juce::ToggleButton> (name));
        input.setTooltip (
            "Ticked: the keys of this MIDI input are heard. Its channel decides which division they play.");
        input.setToggleState (! host_.unheardMidi().contains (name), juce::dontSendNotification);
        input.onClick = [this, &input, name] { hear (name, input.getToggleState()); };
        addAndMakeVisible (input);
    }
    resized();
    repaint();
}

void AudioPage::hear (const juce::String& name, bool isHeard)
{
    auto unheard = host_.unheardMidi();
    if (isHeard)
        unheard.removeString (name);
    else
        unheard.addIfNotAlreadyThere (name);
    host_.setUnheardMidi (unheard);
    if (onMidiChosen)
        onMidiChosen (unheard);
}

void AudioPage::fillOutputs()
{
    output_.clear (juce::dontSendNotification);
    output_.addItemList (host_.outputsOf (system_.getText()), 1);
}

void AudioPage::choose()
{
    const auto error = host_.choose (system_.getText(), output_.getText());
    if (onChosen)
        onChosen (error);
    repaint();
}

juce::Rectangle<int> AudioPage::row (int index) const
{
    return getLocalBounds()
        .withHeight (Lettering::px (rowHeight))
        .translated (0, index * Lettering::px (rowHeight + rowGap));
}

void AudioPage::resized()
{
    const int inset = Lettering::px (labelWidth);
    system_.setBounds (row (0).withTrimmedLeft (inset).reduced (0, Lettering::px (4.0f)));
    output_.setBounds (row (1).withTrimmedLeft (inset).reduced (0, Lettering::px (4.0f)));
    auto area = row (2).withTrimmedLeft (inset).withHeight (Lettering::px (inputHeight));
    for (auto& input : inputs_)
    {
        const int width = Lettering::widthOf (Lettering::body(), input->getButtonText()) + Lettering::px (36.0f);
        input->setBounds (area.withWidth (std::min (width, area.getWidth())));
        area.translate (0, Lettering::px (inputHeight));
    }
}

juce::String AudioPage::inputsText() const
{
    if (names_.isEmpty())
        return "none yet; one that is plugged in is heard at once";
    const int more = names_.size() - static_cast<int> (inputs_.size());
    return more > 0 ? "and " + juce::String (more) + " more, heard too" : juce::String();
}

void AudioPage::paint (juce::Graphics& graphics)
{
    graphics.setColour (BenchLook::paletteOf (*this).ink);
    const juce::String labels[] = { "Sound system", "Output", "MIDI inputs" };
    for (int index = 0; index < 3; ++index)
    {
        const auto area = row (index).withWidth (Lettering::px (labelWidth));
        Lettering::draw (graphics, *this, labels[index], Lettering::body(),
                         index < 2 ? area : area.withHeight (Lettering::px (inputHeight)));
    }
    const auto area = row (2)
                          .withTrimmedLeft (Lettering::px (labelWidth))
                          .withHeight (Lettering::px (inputHeight))
                          .translated (0, static_cast<int> (inputs_.size()) * Lettering::px (inputHeight));
    Lettering::draw (graphics, *this, inputsText(), Lettering::body(), area);
}

} // namespace stopwright

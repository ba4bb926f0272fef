// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/AudioPage.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"

namespace stopwright
{

namespace
{

constexpr float rowHeight = 36.0f;
constexpr float labelWidth = 120.0f;

} // namespace

AudioPage::AudioPage (AudioHost& host) : host_ (host)
{
    system_.setTitle ("Sound system");
    output_.setTitle ("Output");
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
        .translated (0, index * Lettering::px (rowHeight + 3.0f));
}

void AudioPage::resized()
{
    const int inset = Lettering::px (labelWidth);
    system_.setBounds (row (0).withTrimmedLeft (inset).reduced (0, Lettering::px (4.0f)));
    output_.setBounds (row (1).withTrimmedLeft (inset).reduced (0, Lettering::px (4.0f)));
}

void AudioPage::paint (juce::Graphics& graphics)
{
    graphics.setColour (BenchLook::paletteOf (*this).ink);
    const auto inputs = host_.midiInputs();
    const juce::String labels[] = { "Sound system", "Output", "MIDI inputs" };
    for (int index = 0; index < 3; ++index)
        Lettering::draw (graphics, *this, labels[index], Lettering::body(),
                         row (index).withWidth (Lettering::px (labelWidth)));
    const auto text = inputs.isEmpty() ? juce::String ("none yet; one that is plugged in is heard at once")
                                       : inputs.joinIntoString (", ");
    Lettering::draw (graphics, *this, text, Lettering::body(), row (2).withTrimmedLeft (Lettering::px (labelWidth)));
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/LeadRow.h"

#include "Bench/BenchLook.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr float labelWidth = 52.0f;

juce::String wordFor (const std::string& choice)
{
    return choice == "0" ? juce::String ("common") : juce::String::fromUTF8 (choice.c_str());
}

} // namespace

LeadRow::LeadRow (const juce::String& label, const juce::String& tooltip, const juce::String& term) : label_ (label)
{
    setTooltip (tooltip);
    setTerm (*this, term);
    box_.setTitle (label);
    box_.setTooltip (tooltip);
    box_.onChange = [this]
    {
        const auto index = static_cast<std::size_t> (box_.getSelectedId() - 1);
        if (onChoose)
            onChoose (index < choices_.size() ? choices_[index] : std::string());
    };
    addAndMakeVisible (box_);
}

void LeadRow::fill (const std::vector<std::string>& choices, const std::string& present, const juce::String& newLabel)
{
    choices_ = choices;
    box_.clear (juce::dontSendNotification);
    for (std::size_t index = 0; index < choices_.size(); ++index)
        box_.addItem (wordFor (choices_[index]), static_cast<int> (index) + 1);
    if (newLabel.isNotEmpty())
    {
        box_.addSeparator();
        box_.addItem (newLabel, static_cast<int> (choices_.size()) + 1);
    }
    const auto found = std::ranges::find (choices_, present);
    if (found != choices_.end())
        box_.setSelectedId (static_cast<int> (found - choices_.begin()) + 1, juce::dontSendNotification);
    else
        box_.setText (wordFor (present), juce::dontSendNotification);
}

void LeadRow::resized()
{
    box_.setBounds (getLocalBounds().withTrimmedLeft (Lettering::px (labelWidth)).reduced (0, 1));
}

void LeadRow::paint (juce::Graphics& graphics)
{
    graphics.setColour (BenchLook::paletteOf (*this).faintInk);
    Lettering::draw (graphics, *this, label_, Lettering::small(),
                     getLocalBounds().removeFromLeft (Lettering::px (labelWidth - 4.0f)),
                     juce::Justification::centredRight);
}

} // namespace stopwright

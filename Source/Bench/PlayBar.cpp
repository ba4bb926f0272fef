// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PlayBar.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Units/Pitch.h"

#include <algorithm>

namespace stopwright
{

PlayBar::PlayBar (BenchSession& session, KeyHands& hands, TypingKeys& typing)
    : hands_ (hands),
      typing_ (typing),
      keyboard_ (session, hands, typing)
{
    hold_.setTooltip (
        "Hold: a key that is struck stays down until it is struck again, so that both hands are free for the "
        "parts.");
    hold_.onClick = [this] { hands_.setHold (hold_.getToggleState()); };
    allOff_.setTooltip ("Lets every key go (Escape).");
    allOff_.onClick = [this] { allOff(); };
    addAndMakeVisible (hold_);
    addAndMakeVisible (allOff_);
    addAndMakeVisible (keyboard_);
}

void PlayBar::setHold (bool isOn)
{
    hold_.setToggleState (isOn, juce::dontSendNotification);
    hands_.setHold (isOn);
}

void PlayBar::allOff()
{
    typing_.releaseAll();
    hands_.releaseAll();
    keyboard_.refresh();
}

void PlayBar::refresh()
{
    hands_.flush();
    keyboard_.refresh();
    if (const auto text = octaveText(); text != shownOctave_)
    {
        shownOctave_ = text;
        repaint();
    }
}

juce::String PlayBar::octaveText() const
{
    const auto from = keyName (std::clamp (typing_.base(), 0, 127));
    return "Letters A to ; play from " + juce::String (from) + "   Z, X: octave down, up";
}

void PlayBar::resized()
{
    auto area = getLocalBounds();
    auto row = area.removeFromTop (Lettering::px (rowHeight)).reduced (0, Lettering::px (3.0f));
    hold_.setBounds (row.removeFromLeft (Lettering::widthOf (Lettering::body(), "Hold") + Lettering::px (36.0f)));
    row.removeFromLeft (Lettering::px (8.0f));
    allOff_.setBounds (
        row.removeFromLeft (Lettering::widthOf (Lettering::body(), allOff_.getButtonText()) + Lettering::px (22.0f)));
    keyboard_.setBounds (area);
}

void PlayBar::paint (juce::Graphics& graphics)
{
    const auto row = getLocalBounds()
                         .removeFromTop (Lettering::px (rowHeight))
                         .withTrimmedLeft (allOff_.getRight() + Lettering::px (16.0f));
    graphics.setColour (BenchLook::paletteOf (*this).faintInk);
    Lettering::draw (graphics, *this, octaveText(), Lettering::small(), row);
}

} // namespace stopwright

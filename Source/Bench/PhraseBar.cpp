// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PhraseBar.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"

#include <utility>

namespace stopwright
{

namespace
{

constexpr float gap = 8.0f;

/// Minutes and seconds: 0:07, 12:40.
juce::String clockText (double seconds)
{
    const int whole = static_cast<int> (seconds);
    return juce::String (whole / 60) + ":" + juce::String (whole % 60).paddedLeft ('0', 2);
}

} // namespace

PhraseBar::PhraseBar (PlayerActions& player) : player_ (player)
{
    setTitle ("Phrase");
    button_.onClick = [this]
    {
        if (player_.isPlaying())
            player_.stop();
        else if (onMenu)
            onMenu (button_);
    };
    loop_.setTooltip ("Loop: at its end the phrase begins again.");
    loop_.onClick = [this] { player_.deck().setLoop (loop_.getToggleState()); };
    addAndMakeVisible (button_);
    addChildComponent (loop_);
    button_.setTooltip ("Plays a MIDI file (Ctrl+P: the last one again).");
}

void PhraseBar::refresh()
{
    const bool isPlaying = player_.isPlaying();
    const auto& deck = player_.deck();
    loop_.setToggleState (deck.isLoop(), juce::dontSendNotification);
    const auto position =
        isPlaying ? clockText (deck.positionSeconds()) + " of " + clockText (deck.lengthSeconds()) : juce::String();
    if (std::exchange (position_, position) != position)
        repaint();
    if (std::exchange (isPlaying_, isPlaying) == isPlaying)
        return;
    button_.setButtonText (isPlaying ? "Stop" : "Play");
    button_.setTooltip (isPlaying ? "Stops the phrase and lets its keys go; others that are held stay (Ctrl+P)."
                                  : "Plays a MIDI file (Ctrl+P: the last one again).");
    loop_.setVisible (isPlaying);
    if (onWidthChange)
        onWidthChange();
}

int PhraseBar::buttonWidth() const
{
    return Lettering::widthOf (Lettering::body(), button_.getButtonText()) + Lettering::px (22.0f);
}

int PhraseBar::loopWidth()
{
    return Lettering::widthOf (Lettering::body(), "Loop") + Lettering::px (36.0f);
}

int PhraseBar::positionWidth() const
{
    // As wide as any time of this length, so that nothing moves while it plays.
    const auto length = clockText (player_.deck().lengthSeconds());
    const auto widest = juce::String::repeatedString ("0", length.length() - 1) + ":";
    return Lettering::widthOf (Lettering::small(), widest + " of " + widest) + Lettering::px (2.0f);
}

int PhraseBar::widthWanted() const
{
    return isPlaying_ ? buttonWidth() + loopWidth() + positionWidth() + Lettering::px (2.0f * gap) : buttonWidth();
}

void PhraseBar::resized()
{
    auto row = getLocalBounds();
    button_.setBounds (row.removeFromLeft (buttonWidth()));
    row.removeFromLeft (Lettering::px (gap));
    loop_.setBounds (row.removeFromLeft (loopWidth()));
}

void PhraseBar::paint (juce::Graphics& graphics)
{
    if (position_.isEmpty())
        return;
    graphics.setColour (BenchLook::paletteOf (*this).ink);
    Lettering::draw (graphics, *this, position_, Lettering::small(),
                     getLocalBounds().withLeft (loop_.getRight() + Lettering::px (gap)));
}

} // namespace stopwright

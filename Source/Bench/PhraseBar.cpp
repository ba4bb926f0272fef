// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PhraseBar.h"

#include "Bench/BenchLook.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

constexpr float gap = 8.0f;
constexpr const char* playLesson =
    "What to play: a MIDI file, or one of the pieces beside it (Ctrl+P: the last one again).";
constexpr const char* stopLesson =
    "Stops what plays and lets its keys go; others that are held stay (Ctrl+P). Escape lets all keys go.";

/// Minutes and seconds: 0:07, 12:40.
juce::String clockText (double seconds)
{
    const int whole = static_cast<int> (seconds);
    return juce::String (whole / 60) + ":" + juce::String (whole % 60).paddedLeft ('0', 2);
}

} // namespace

PhraseBar::PhraseBar (PlayerActions& player, KeyHands& hands) : player_ (player)
{
    setTitle ("Phrase");
    button_.onClick = [this]
    {
        if (player_.isPlaying())
            player_.stop();
        else if (onMenu)
            onMenu (button_);
    };
    demonstration_.onClick = [this] { player_.playDemonstration(); };
    scale_.onClick = [this, &hands] { player_.playScale (hands.division()); };
    chord_.onClick = [this, &hands] { player_.playFullChord (hands.division()); };
    demonstration_.setTooltip ("Plays the demonstration phrase that comes with the program (F5).");
    scale_.setTooltip (
        "Plays every key of this division's compass from the lowest up: how level and tone change along the keys, and any "
        "dead note (F6).");
    chord_.setTooltip (
        "Plays ten keys of this division together, the chord that headroom is judged by: whether a stage clips, and what "
        "the stops rob each other of (F7).");
    setTerm (scale_, "compass");
    setTerm (chord_, "headroom");
    loop_.setTooltip ("Loop: at its end the piece begins again.");
    loop_.onClick = [this] { player_.deck().setLoop (loop_.getToggleState()); };
    addAndMakeVisible (button_);
    for (auto* piece : pieces_)
        addAndMakeVisible (*piece);
    addChildComponent (loop_);
    button_.setTooltip (playLesson);
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
    showPlaying (isPlaying);
    if (onWidthChange)
        onWidthChange();
}

void PhraseBar::showPlaying (bool isPlaying)
{
    // What had the keyboard may go out of sight: the button that stops, or chooses, has it then.
    const bool hadFocus = hasKeyboardFocus (true);
    button_.setButtonText (isPlaying ? "Stop" : "Play");
    button_.setTooltip (isPlaying ? stopLesson : playLesson);
    for (auto* piece : pieces_)
        piece->setVisible (! isPlaying);
    loop_.setVisible (isPlaying);
    if (hadFocus && ! hasKeyboardFocus (true))
        button_.grabKeyboardFocus();
}

int PhraseBar::widthOf (const juce::TextButton& button)
{
    return Lettering::widthOf (Lettering::body(), button.getButtonText()) + Lettering::px (22.0f);
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
    int width = widthOf (button_);
    if (isPlaying_)
        return width + loopWidth() + positionWidth() + Lettering::px (2.0f * gap);
    for (const auto* piece : pieces_)
        width += widthOf (*piece) + Lettering::px (gap);
    return width;
}

void PhraseBar::resized()
{
    auto row = getLocalBounds();
    button_.setBounds (row.removeFromLeft (widthOf (button_)));
    row.removeFromLeft (Lettering::px (gap));
    auto pieceRow = row;
    for (auto* piece : pieces_)
    {
        piece->setBounds (pieceRow.removeFromLeft (widthOf (*piece)));
        pieceRow.removeFromLeft (Lettering::px (gap));
    }
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

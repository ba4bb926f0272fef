// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PlayBar.h"

#include "Bench/BenchLook.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"
#include "Units/Pitch.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr float divisionsWidth = 150.0f;

} // namespace

PlayBar::PlayBar (BenchSession& session, KeyHands& hands, TypingKeys& typing, PlayerActions& player)
    : session_ (session),
      hands_ (hands),
      typing_ (typing),
      player_ (player),
      phrase_ (player, hands),
      swell_ (session.processor().engine()),
      keyboard_ (session, hands, typing)
{
    hold_.setTooltip (
        "Hold: a key that is struck stays down until it is struck again, so that both hands are free for the "
        "parts.");
    hold_.onClick = [this] { hands_.setHold (hold_.getToggleState()); };
    allOff_.setTooltip (
        "Lets every key go, whatever holds it: Hold, the mouse, letters, MIDI, a coupler; and stops what plays (Escape).");
    allOff_.onClick = [this] { allOff(); };
    divisions_.setTitle ("Division that is played");
    divisions_.setTooltip (
        "Division: a keyboard of the organ and the stops that belong to it. The keys below and the letters play the one "
        "chosen here; a MIDI keyboard plays the one its channel belongs to.");
    divisions_.onChange = [this] { playDivision (divisions_.getSelectedId() - 1); };
    setTerm (divisions_, "division");
    setTerm (keyboard_, "compass");
    addAndMakeVisible (hold_);
    addAndMakeVisible (allOff_);
    addChildComponent (divisions_);
    phrase_.onWidthChange = [this]
    {
        resized();
        repaint();
    };
    addAndMakeVisible (phrase_);
    addChildComponent (swell_);
    addAndMakeVisible (keyboard_);
    session_.addListener (*this);
    fillDivisions();
}

PlayBar::~PlayBar()
{
    session_.removeListener (*this);
}

void PlayBar::sessionChanged (BenchSession::Change change)
{
    if (change == BenchSession::Change::document)
        fillDivisions();
    else if (change == BenchSession::Change::stop)
        playDivision (session_.document().divisionInHand());
}

void PlayBar::fillDivisions()
{
    const auto& instrument = session_.document().instrument;
    divisions_.clear (juce::dontSendNotification);
    if (instrument)
    {
        for (const auto& division : instrument->divisions)
            divisions_.addItem (juce::String::fromUTF8 (division.name.c_str()), divisions_.getNumItems() + 1);
    }
    divisions_.setVisible (instrument && instrument->divisions.size() > 1);
    swell_.setVisible (instrument.has_value());
    playDivision (session_.document().divisionInHand());
    resized();
}

void PlayBar::playDivision (int division)
{
    if (division != hands_.division())
    {
        typing_.releaseAll();
        hands_.setDivision (division);
    }
    divisions_.setSelectedId (division + 1, juce::dontSendNotification);
    keyboard_.showDivision();
    repaint();
}

void PlayBar::setHold (bool isOn)
{
    hold_.setToggleState (isOn, juce::dontSendNotification);
    hands_.setHold (isOn);
}

void PlayBar::takeFocus()
{
    if (keyboard_.isVisible())
        keyboard_.grabKeyboardFocus();
    else
        hold_.grabKeyboardFocus();
}

void PlayBar::allOff()
{
    player_.stop();
    typing_.releaseAll();
    hands_.releaseAll();
    session_.processor().releaseMidiKeys();
    keyboard_.refresh();
}

void PlayBar::refresh()
{
    hands_.flush();
    keyboard_.refresh();
    swell_.refresh();
    phrase_.refresh();
    if (const auto text = octaveText(); text != shownOctave_)
    {
        shownOctave_ = text;
        repaint();
    }
}

juce::String PlayBar::octaveText() const
{
    const auto from = keyName (std::clamp (typing_.base(), 0, 127));
    return "Letters A to ; play from " + juce::String (from);
}

void PlayBar::resized()
{
    auto area = getLocalBounds();
    auto row = area.removeFromTop (Lettering::px (rowHeight)).reduced (0, Lettering::px (3.0f));
    hold_.setBounds (row.removeFromLeft (Lettering::widthOf (Lettering::body(), "Hold") + Lettering::px (36.0f)));
    row.removeFromLeft (Lettering::px (8.0f));
    allOff_.setBounds (
        row.removeFromLeft (Lettering::widthOf (Lettering::body(), allOff_.getButtonText()) + Lettering::px (22.0f)));
    if (divisions_.isVisible())
    {
        row.removeFromLeft (Lettering::px (8.0f));
        divisions_.setBounds (row.removeFromLeft (Lettering::px (divisionsWidth)));
    }
    row.removeFromLeft (Lettering::px (8.0f));
    phrase_.setBounds (row.removeFromLeft (phrase_.widthWanted()));
    if (swell_.isVisible())
        swell_.setBounds (row.removeFromRight (Lettering::px (SwellBar::width)));
    keyboard_.setBounds (area);
}

void PlayBar::paint (juce::Graphics& graphics)
{
    auto row = getLocalBounds().removeFromTop (Lettering::px (rowHeight));
    row.setLeft (phrase_.getRight() + Lettering::px (16.0f));
    if (swell_.isVisible())
        row.setRight (swell_.getX() - Lettering::px (8.0f));

    // The second half gives way where the row is short, and all of it where a phrase plays in a narrow window.
    const auto font = Lettering::small();
    const auto text = octaveText();
    const auto whole = text + "   N, M: octave down, up";
    graphics.setColour (BenchLook::paletteOf (*this).faintInk);
    if (const int width = row.getWidth(); Lettering::widthOf (font, text) <= width)
        Lettering::draw (graphics, *this, Lettering::widthOf (font, whole) <= width ? whole : text, font, row);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/KeyboardStrip.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Units/Pitch.h"

#include <algorithm>
#include <array>
#include <utility>

namespace stopwright
{

namespace
{

bool isNatural (int key)
{
    constexpr std::array natural { true, false, true, false, true, true, false, true, false, true, false, true };
    return natural[static_cast<std::size_t> (((key % 12) + 12) % 12)];
}

/// How many naturals lie below `key`, counted from key 0.
int naturalsBelow (int key)
{
    constexpr std::array within { 0, 1, 1, 2, 2, 3, 4, 4, 5, 5, 6, 6 };
    return (key / 12) * 7 + within[static_cast<std::size_t> (key % 12)];
}

constexpr float sharpHeight = 0.58f;
constexpr float sharpWidth = 0.62f;

} // namespace

KeyboardStrip::KeyboardStrip (BenchSession& session, KeyHands& hands, TypingKeys& typing)
    : session_ (session),
      hands_ (hands),
      typing_ (typing)
{
    setTitle ("Keyboard");
    setDescription ("Left and right choose a key, Space plays it; the letters A to ; play the octave that is marked.");
    setTooltip (
        "Compass: the keys this division has. Play with the mouse, a MIDI keyboard, or the letters shown on the "
        "keys; N and M move the letters by an octave.");
    setWantsKeyboardFocus (true);
    session_.addListener (*this);
    sessionChanged (BenchSession::Change::document);
}

KeyboardStrip::~KeyboardStrip()
{
    session_.removeListener (*this);
}

void KeyboardStrip::sessionChanged (BenchSession::Change change)
{
    if (change == BenchSession::Change::document)
        showDivision();
}

void KeyboardStrip::showDivision()
{
    midiChannels_ =
        session_.document().midiChannels (hands_.division()) | (1U << Keyboard::ofDivision (hands_.division()));
    typing_.setCompass (lowest(), highest());
    focusKey_ = std::clamp (focusKey_, lowest(), highest());
    repaint();
}

float KeyboardStrip::naturalWidth() const
{
    const int low = isNatural (lowest()) ? lowest() : lowest() - 1;
    const int high = isNatural (highest()) ? highest() : highest() + 1;
    const int count = naturalsBelow (high) - naturalsBelow (low) + 1;
    return static_cast<float> (getWidth() - 4) / static_cast<float> (std::max (1, count));
}

juce::Rectangle<float> KeyboardStrip::areaOf (int key) const
{
    const int low = isNatural (lowest()) ? lowest() : lowest() - 1;
    const float width = naturalWidth();
    const auto full = getLocalBounds().toFloat().reduced (2.0f);
    const float left = full.getX() + width * static_cast<float> (naturalsBelow (key) - naturalsBelow (low));
    if (isNatural (key))
        return { left, full.getY(), width, full.getHeight() };
    return { left - 0.5f * sharpWidth * width, full.getY(), sharpWidth * width, sharpHeight * full.getHeight() };
}

int KeyboardStrip::keyAt (juce::Point<float> place) const
{
    for (const bool natural : { false, true })
    {
        for (int key = lowest(); key <= highest(); ++key)
        {
            if (isNatural (key) == natural && areaOf (key).contains (place))
                return key;
        }
    }
    return -1;
}

bool KeyboardStrip::isDown (int key) const
{
    return hands_.isDown (key) || session_.processor().isMidiKeyDown (key, midiChannels_);
}

void KeyboardStrip::refresh()
{
    std::bitset<128> down;
    for (int key = lowest(); key <= highest(); ++key)
        down[static_cast<std::size_t> (key)] = isDown (key);
    if (std::exchange (shown_, down) != down || std::exchange (shownBase_, typing_.base()) != typing_.base())
        repaint();
}

void KeyboardStrip::paint (juce::Graphics& graphics)
{
    BenchLook::drawSheet (graphics, *this);
    for (const bool natural : { true, false })
    {
        for (int key = lowest(); key <= highest(); ++key)
        {
            if (isNatural (key) == natural)
                paintKey (graphics, key);
        }
    }
    if (hasKeyboardFocus (false))
    {
        const auto area = areaOf (focusKey_);
        BenchLook::drawFocusRing (graphics, *this,
                                  isNatural (focusKey_) ? area.withTrimmedTop (sharpHeight * area.getHeight()) : area);
        graphics.setColour (BenchLook::paletteOf (*this).focus);
        graphics.drawRect (getLocalBounds(), 2);
    }
}

void KeyboardStrip::paintKey (juce::Graphics& graphics, int key)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto area = areaOf (key);
    const bool isHeld = isDown (key);
    const auto body = area.reduced (isNatural (key) ? 0.5f : 0.0f);

    graphics.setColour (isHeld ? colours.result : isNatural (key) ? colours.sheet : colours.faintInk);
    graphics.fillRect (body);
    graphics.setColour (isNatural (key) ? colours.faintInk : colours.ink);
    graphics.drawRect (body, 1.0f);
    paintKeyText (graphics, key, area);

    if (isHeld)
    {
        // A held key carries a disc as well, so that it does not speak by colour alone.
        const float size = std::min (8.0f * Lettering::scale(), area.getWidth() * 0.45f);
        graphics.setColour (colours.sheet);
        graphics.fillEllipse (juce::Rectangle<float> (size, size)
                                  .withCentre ({ area.getCentreX(), area.getY() + area.getHeight() * 0.28f }));
    }
}

void KeyboardStrip::paintKeyText (juce::Graphics& graphics, int key, juce::Rectangle<float> area)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const bool isHeld = isDown (key);
    const auto font = Lettering::small();
    const int row = Lettering::px (16.0f);
    auto lower = area.toNearestInt().withTrimmedTop (
        static_cast<int> (area.getHeight() * (isNatural (key) ? sharpHeight : 0.0f)));

    if (isNatural (key))
    {
        const juce::String name (keyName (key));
        const bool isC = key % 12 == 0;
        graphics.setColour (isHeld ? colours.sheet : isC ? colours.ink : colours.faintInk);
        if (Lettering::widthOf (font, name) <= lower.getWidth() && lower.getHeight() >= row)
        {
            // Where there is no room for all names, those of C stay.
            const bool allFit = Lettering::widthOf (font, "G4") + 3 <= lower.getWidth();
            if (isC || allFit)
                Lettering::draw (graphics, *this, name, font, lower.removeFromBottom (row),
                                 juce::Justification::centred);
        }
    }

    const char character = typing_.characterFor (key);
    const auto letter =
        juce::String::charToString (juce::CharacterFunctions::toUpperCase (juce::juce_wchar (character)));
    if (character == 0 || Lettering::widthOf (font, letter) > lower.getWidth() || lower.getHeight() < row)
        return;
    graphics.setColour (isHeld || ! isNatural (key) ? colours.sheet : colours.result);
    Lettering::draw (graphics, *this, letter, font, lower.removeFromBottom (row), juce::Justification::centred);
}

void KeyboardStrip::holdWithMouse (int key)
{
    if (key == mouseKey_)
        return;
    if (mouseKey_ >= 0)
        hands_.release (mouseKey_, KeyHands::Hand::mouse);
    mouseKey_ = key;
    if (key >= 0)
    {
        focusKey_ = key;
        hands_.press (key, KeyHands::Hand::mouse);
    }
    refresh();
}

void KeyboardStrip::mouseDown (const juce::MouseEvent& event)
{
    grabKeyboardFocus();
    holdWithMouse (keyAt (event.position));
}

void KeyboardStrip::mouseDrag (const juce::MouseEvent& event)
{
    // Sliding over the keys plays them, except with Hold, where it would latch everything on the way.
    if (! hands_.isHoldOn())
        holdWithMouse (keyAt (event.position));
}

void KeyboardStrip::mouseUp (const juce::MouseEvent&)
{
    holdWithMouse (-1);
}

bool KeyboardStrip::keyPressed (const juce::KeyPress& key)
{
    if (key == juce::KeyPress::leftKey || key == juce::KeyPress::rightKey)
    {
        focusKey_ = std::clamp (focusKey_ + (key == juce::KeyPress::rightKey ? 1 : -1), lowest(), highest());
        setDescription (juce::String (keyName (focusKey_)));
        repaint();
        return true;
    }
    if (key == juce::KeyPress::spaceKey)
    {
        if (spaceKey_ < 0)
        {
            spaceKey_ = focusKey_;
            hands_.press (spaceKey_, KeyHands::Hand::mouse);
            refresh();
        }
        return true;
    }
    return false;
}

bool KeyboardStrip::keyStateChanged (bool)
{
    if (spaceKey_ >= 0 && ! juce::KeyPress::isKeyCurrentlyDown (juce::KeyPress::spaceKey))
    {
        hands_.release (std::exchange (spaceKey_, -1), KeyHands::Hand::mouse);
        refresh();
    }
    return false;
}

void KeyboardStrip::focusGained (FocusChangeType)
{
    repaint();
}

void KeyboardStrip::focusLost (FocusChangeType)
{
    if (spaceKey_ >= 0)
        hands_.release (std::exchange (spaceKey_, -1), KeyHands::Hand::mouse);
    repaint();
}

} // namespace stopwright

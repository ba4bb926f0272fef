// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/HarmonicPanel.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Units/Engineering.h"
#include "Units/Pitch.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

juce::String reading (double value, Quantity quantity)
{
    return juce::String::fromUTF8 (formatForReading (value, quantity).c_str());
}

juce::String decibels (double value)
{
    if (! std::isfinite (value) || value < -199.0)
        return "none";
    return juce::String (value, 1).replaceCharacter ('-', 0x2212) + " dB";
}

juce::String partialName (double harmonic)
{
    return std::abs (harmonic - std::round (harmonic)) < 1e-6 ? juce::String (juce::roundToInt (harmonic))
                                                              : juce::String (harmonic, 1);
}

} // namespace

HarmonicPanel::HarmonicPanel (BenchSession& session)
    : session_ (session),
      worker_ ([this] (const HarmonicPicture& picture) { take (picture); })
{
    setTitle ("Harmonics of the last key");
    setWantsKeyboardFocus (true);
    setTooltip (
        "Partial: one of the simple tones a sound is made of, numbered from the fundamental (1) of the key's 8 ft "
        "pitch. Behind: what the tapped waves hold. In front: what the card lets through, before its mixing resistor and bus. An open circle marks a "
        "partial that the waves do not hold at all: no network can bring it out. Levels are in dB re the strongest "
        "partial, of the source and of the result each.");
    session_.addListener (*this);
    request();
}

HarmonicPanel::~HarmonicPanel()
{
    session_.removeListener (*this);
}

void HarmonicPanel::setKey (int key)
{
    // Another division may have keys that the stop in hand has not.
    key = std::clamp (key, session_.keySource().lowestKey, session_.keySource().highestKey);
    if (std::exchange (key_, key) != key)
        request();
}

void HarmonicPanel::sessionChanged (BenchSession::Change change)
{
    if (change == BenchSession::Change::document || change == BenchSession::Change::stop)
        key_ = std::clamp (key_, session_.keySource().lowestKey, session_.keySource().highestKey);
    if (change != BenchSession::Change::saved && change != BenchSession::Change::registration)
        request();
}

void HarmonicPanel::request()
{
    if (session_.isOpen())
        worker_.request (session_.card(), session_.keySource(), key_);
}

void HarmonicPanel::take (const HarmonicPicture& picture)
{
    picture_ = picture;
    if (chosen_ >= static_cast<int> (picture_.bars.size()))
        chosen_ = -1;
    updateAxis();
    setDescription (readingText());
    repaint();
}

void HarmonicPanel::updateAxis()
{
    auto area = getLocalBounds().reduced (Lettering::px (8.0f));
    area.removeFromTop (Lettering::px (74.0f));
    area.removeFromLeft (Lettering::px (34.0f));
    area.removeFromRight (Lettering::px (6.0f));
    area.removeFromBottom (Lettering::px (42.0f));
    axis_.plot = area.toFloat();
    axis_.lowestHz = std::max (10.0, (picture_.bars.empty() ? 65.0 : picture_.bars.front().frequencyHz) * 0.8);
}

void HarmonicPanel::resized()
{
    updateAxis();
}

int HarmonicPanel::nearestBar (float x) const
{
    int nearest = -1;
    float smallest = 12.0f * Lettering::scale();
    for (std::size_t index = 0; index < picture_.bars.size(); ++index)
    {
        const float distance = std::abs (axis_.xOf (picture_.bars[index].frequencyHz) - x);
        if (distance < smallest)
        {
            smallest = distance;
            nearest = static_cast<int> (index);
        }
    }
    return nearest;
}

void HarmonicPanel::choosePartial (int index)
{
    chosen_ = index >= 0 && index < static_cast<int> (picture_.bars.size()) ? index : -1;
    setDescription (readingText());
    repaint();
}

void HarmonicPanel::mouseMove (const juce::MouseEvent& event)
{
    choosePartial (axis_.plot.expanded (0.0f, 40.0f).contains (event.position) ? nearestBar (event.position.x) : -1);
}

void HarmonicPanel::mouseExit (const juce::MouseEvent&)
{
    choosePartial (-1);
}

bool HarmonicPanel::keyPressed (const juce::KeyPress& key)
{
    if (key != juce::KeyPress::leftKey && key != juce::KeyPress::rightKey)
        return false;
    const int last = static_cast<int> (picture_.bars.size()) - 1;
    choosePartial (std::clamp (chosen_ + (key == juce::KeyPress::rightKey ? 1 : -1), 0, std::max (0, last)));
    return true;
}

void HarmonicPanel::focusGained (FocusChangeType)
{
    repaint();
}

void HarmonicPanel::focusLost (FocusChangeType)
{
    choosePartial (-1);
}

juce::String HarmonicPanel::readingText() const
{
    if (! session_.isOpen())
        return "Open a card to see what its waves hold and what it lets through.";
    if (! picture_.refusal.empty())
        return juce::String::fromUTF8 (picture_.refusal.c_str());
    const int index = chosen_ >= 0 ? chosen_ : picture_.strongest;
    if (index < 0 || index >= static_cast<int> (picture_.bars.size()))
        return "No partial of this key is sounding.";

    const auto& bar = picture_.bars[static_cast<std::size_t> (index)];
    const auto head = (chosen_ >= 0 ? "Partial " : "Strongest: partial ") + partialName (bar.harmonic) + ", "
                      + reading (bar.frequencyHz, Quantity::frequency) + ": ";
    if (bar.isAbsent)
        return head + "not in the source";
    return head + decibels (bar.resultDb) + " (" + reading (bar.resultPeakVolts, Quantity::voltage) + " of "
           + reading (bar.sourcePeakVolts, Quantity::voltage) + ")";
}

void HarmonicPanel::paint (juce::Graphics& graphics)
{
    BenchLook::drawSheet (graphics, *this);
    paintHeader (graphics);
    if (axis_.plot.getWidth() > 40.0f && axis_.plot.getHeight() > 40.0f && ! picture_.bars.empty())
    {
        paintGrid (graphics);
        paintBars (graphics);
        paintPartialNumbers (graphics);
        paintChosen (graphics);
    }
    if (hasKeyboardFocus (false))
        BenchLook::drawFocusRing (graphics, *this, getLocalBounds().toFloat());
}

void HarmonicPanel::paintHeader (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    auto area = getLocalBounds().reduced (Lettering::px (14.0f), Lettering::px (8.0f));
    auto titleRow = area.removeFromTop (Lettering::px (28.0f));
    graphics.setColour (colours.ink);
    const juce::String title ("Harmonics");
    Lettering::draw (graphics, *this, title, Lettering::title(),
                     titleRow.removeFromLeft (Lettering::widthOf (Lettering::title(), title)));
    titleRow.removeFromLeft (Lettering::px (10.0f));

    if (picture_.keyHz > 0.0)
    {
        const auto keyText =
            juce::String (keyName (std::clamp (key_, 0, 127))) + ", " + reading (picture_.keyHz, Quantity::frequency);
        const auto whole = keyText + ", at the card's output";
        const bool hasRoom = Lettering::widthOf (Lettering::body(), whole) <= titleRow.getWidth();
        Lettering::draw (graphics, *this, hasRoom ? whole : keyText, Lettering::body(), titleRow);
    }

    graphics.setColour (picture_.refusal.empty() ? colours.ink : colours.notice);
    const auto readingFont = Lettering::small();
    Lettering::draw (graphics, *this, readingText(), readingFont, area.removeFromTop (Lettering::px (18.0f)));
    paintLegend (graphics, area.removeFromTop (Lettering::px (18.0f)));
}

} // namespace stopwright

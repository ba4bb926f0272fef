// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ReadingChooser.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Bench/ReadingPrint.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr int count = static_cast<int> (readingKinds.size());

juce::Font fontOf (bool isChosen)
{
    return isChosen ? Lettering::small().boldened() : Lettering::small();
}

} // namespace

ReadingChooser::ReadingChooser()
{
    setWantsKeyboardFocus (true);
    setTooltip (
        "Reading: a picture of what the stop in hand does. Harmonics: the partials of one key. Response: what the card "
        "lets through over frequency. Wave: volts over time. Compass: all keys at once. Stages: how near the drawn stops "
        "come to clipping the buses and preamps. The left and right arrow keys go from one to the next.");
    show (ReadingKind::harmonics);
}

void ReadingChooser::show (ReadingKind kind)
{
    chosen_ = kind;
    setTitle (juce::String ("Reading: ") + readingName (kind));
    repaint();
}

void ReadingChooser::choose (ReadingKind kind)
{
    if (kind == chosen_)
        return;
    show (kind);
    if (onChosen)
        onChosen (kind);
}

/// What is left of the row beside the words is shared out between them.
juce::Rectangle<int> ReadingChooser::areaOf (ReadingKind kind) const
{
    int words = 0;
    for (const auto each : readingKinds)
        words += Lettering::widthOf (fontOf (true), readingName (each));
    const int room = std::min (Lettering::px (18.0f), std::max (0, getWidth() - words) / count);
    int x = 0;
    for (const auto each : readingKinds)
    {
        const int width = Lettering::widthOf (fontOf (true), readingName (each)) + room;
        if (each == kind)
            return { x, 0, width, getHeight() };
        x += width;
    }
    return {};
}

std::optional<ReadingKind> ReadingChooser::kindAt (juce::Point<int> place) const
{
    for (const auto kind : readingKinds)
        if (areaOf (kind).contains (place))
            return kind;
    return {};
}

void ReadingChooser::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    graphics.setColour (colours.hairline);
    graphics.fillRect (0, getHeight() - 1, getWidth(), 1);
    for (const auto kind : readingKinds)
    {
        const auto area = areaOf (kind);
        const bool isChosen = kind == chosen_;
        if (isChosen)
        {
            graphics.setColour (colours.result);
            graphics.fillRect (area.withTop (getHeight() - Lettering::px (3.0f)));
        }
        graphics.setColour (isChosen || pointed_ == kind ? colours.ink : colours.faintInk);
        Lettering::draw (graphics, *this, readingName (kind), fontOf (isChosen), area, juce::Justification::centred);
    }
    if (hasKeyboardFocus (false))
        BenchLook::drawFocusRing (graphics, *this, areaOf (chosen_).toFloat());
}

void ReadingChooser::mouseDown (const juce::MouseEvent& event)
{
    if (const auto kind = kindAt (event.getPosition()))
        choose (*kind);
}

void ReadingChooser::mouseMove (const juce::MouseEvent& event)
{
    if (const auto kind = kindAt (event.getPosition()); kind != std::exchange (pointed_, kind))
        repaint();
}

void ReadingChooser::mouseExit (const juce::MouseEvent&)
{
    pointed_.reset();
    repaint();
}

bool ReadingChooser::keyPressed (const juce::KeyPress& key)
{
    int step = 0;
    if (key == juce::KeyPress::leftKey)
        step = -1;
    else if (key == juce::KeyPress::rightKey)
        step = 1;
    else
        return false;
    choose (static_cast<ReadingKind> (std::clamp (static_cast<int> (chosen_) + step, 0, count - 1)));
    return true;
}

void ReadingChooser::focusGained (FocusChangeType)
{
    repaint();
}

void ReadingChooser::focusLost (FocusChangeType)
{
    repaint();
}

} // namespace stopwright

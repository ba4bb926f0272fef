// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/TermList.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"

namespace stopwright
{

juce::Component* TermList::lineFor (juce::Component* existing, const juce::String& words, bool isSelected)
{
    auto* line = existing != nullptr ? static_cast<Line*> (existing) : new Line;
    line->show (words, isSelected);
    return line;
}

void TermList::Line::show (const juce::String& words, bool isSelected)
{
    words_ = words;
    isSelected_ = isSelected;
    repaint();
}

void TermList::Line::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    if (isSelected_)
    {
        graphics.setColour (colours.result);
        graphics.fillRect (getLocalBounds());
    }
    graphics.setColour (isSelected_ ? colours.sheet : colours.ink);
    Lettering::draw (graphics, *this, words_, Lettering::body(),
                     getLocalBounds().withTrimmedLeft (Lettering::px (8.0f)));
}

void TermList::paintOverChildren (juce::Graphics& graphics)
{
    ListBox::paintOverChildren (graphics);
    if (hasKeyboardFocus (true))
        BenchLook::drawFocusRing (graphics, *this, getLocalBounds().toFloat());
}

void TermList::focusGained (FocusChangeType)
{
    repaint();
}

void TermList::focusLost (FocusChangeType)
{
    repaint();
}

} // namespace stopwright

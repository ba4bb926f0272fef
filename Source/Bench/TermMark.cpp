// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/TermMark.h"

#include "Bench/BenchLook.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"

namespace stopwright
{

TermMark::TermMark (const juce::String& words, const juce::String& term, Style style)
    : words_ (words),
      term_ (term),
      style_ (style)
{
    setTitle (words);
    setTerm (*this, term);
    setTooltip ("Click: what this means.");
    setMouseCursor (juce::MouseCursor::PointingHandCursor);
    setRepaintsOnMouseActivity (true);
}

juce::Font TermMark::font() const
{
    return style_ == Style::title ? Lettering::title() : Lettering::strong();
}

int TermMark::widthWanted() const
{
    return Lettering::widthOf (font(), words_);
}

void TermMark::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto letters = font();
    graphics.setColour (colours.ink);
    Lettering::draw (graphics, *this, words_, letters, getLocalBounds());

    // Dots under the letters; a line while the mouse is on them.
    const float y = 0.5f * static_cast<float> (getHeight()) + 0.5f * letters.getHeight() - 1.0f;
    const float width = static_cast<float> (widthWanted() - 1);
    const float dots[] = { 1.5f, 3.0f };
    graphics.setColour (colours.faintInk);
    if (isMouseOver())
        graphics.drawLine (0.0f, y, width, y, 1.2f);
    else
        graphics.drawDashedLine ({ 0.0f, y, width, y }, dots, 2, 1.5f);
}

void TermMark::mouseUp (const juce::MouseEvent& event)
{
    if (! event.mouseWasClicked())
        return;
    if (auto* opener = findParentComponentOfClass<GlossaryOpener>())
        opener->showGlossary (term_);
}

} // namespace stopwright

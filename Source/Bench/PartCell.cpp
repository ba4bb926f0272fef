// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PartCell.h"

#include "Bench/BenchLook.h"
#include "Bench/CardKnob.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"
#include "Bench/PartSymbol.h"
#include "Bench/PartTerms.h"
#include "Bench/PartWords.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

PartCell::PartCell (BenchSession& session, std::string name) : session_ (session), name_ (std::move (name))
{
    setTitle (juce::String (name_));
    if (const auto* part = findPart (session.card(), name_))
    {
        setTooltip (PartWords::lesson (part->value));
        setTerm (*this, partTerm (part->value));
    }
}

void PartCell::refresh()
{
    repaint();
}

void PartCell::setPlace (const Place& place)
{
    place_ = place;
    resized();
    repaint();
}

bool PartCell::hitTest (int x, int y)
{
    if (! place_)
        return true;
    const auto centre = place_->ring.getCentre();
    return juce::Point<int> (x, y).getDistanceFrom (centre) <= place_->ring.getWidth() / 2
           || place_->value.contains (x, y);
}

juce::Rectangle<int> PartCell::symbolArea() const
{
    if (place_)
        return place_->ring;
    const int side = Lettering::px (62.0f);
    return getLocalBounds().removeFromLeft (Lettering::px (66.0f)).withSizeKeepingCentre (side, side);
}

juce::Rectangle<int> PartCell::textArea() const
{
    return getLocalBounds().withTrimmedLeft (Lettering::px (67.0f)).reduced (0, Lettering::px (4.0f));
}

juce::Rectangle<int> PartCell::nameArea() const
{
    return textArea().removeFromTop (Lettering::px (18.0f));
}

juce::Rectangle<int> PartCell::valueArea() const
{
    if (place_)
        return place_->value;
    return textArea().withTrimmedTop (Lettering::px (19.0f)).removeFromTop (Lettering::px (23.0f));
}

juce::Rectangle<int> PartCell::nodesArea() const
{
    return textArea().withTrimmedTop (Lettering::px (43.0f)).removeFromTop (Lettering::px (18.0f));
}

juce::String PartCell::nameText() const
{
    return juce::String (name_);
}

juce::String PartCell::valueText() const
{
    const auto* part = findPart (session_.card(), name_);
    return part != nullptr ? PartWords::standing (part->value) : juce::String();
}

juce::String PartCell::nodesText() const
{
    const auto* part = findPart (session_.card(), name_);
    if (part == nullptr)
        return {};
    juce::StringArray nodes;
    for (const auto& node : part->nodes)
        nodes.add (juce::String (node));
    return nodes.joinIntoString (juce::String::fromUTF8 (" · "));
}

void PartCell::paintSymbol (juce::Graphics& graphics, juce::Rectangle<float> square)
{
    if (const auto* part = findPart (session_.card(), name_))
        PartSymbol::draw (graphics, BenchLook::paletteOf (*this), part->value,
                          square.reduced (square.getWidth() * 0.2f), 1.5f);
}

void PartCell::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    paintRing (graphics, symbolArea().toFloat());
    if (place_)
        return;
    graphics.setColour (colours.ink);
    paintSymbol (graphics, symbolArea().toFloat());

    graphics.setColour (colours.faintInk);
    Lettering::draw (graphics, *this, nameText(), Lettering::small(), nameArea());
    graphics.setColour (colours.ink);
    Lettering::draw (graphics, *this, valueText(), Lettering::strong(), valueArea());
    graphics.setColour (colours.faintInk);
    Lettering::draw (graphics, *this, nodesText(), Lettering::small(), nodesArea());
}

void PartCell::paintOverChildren (juce::Graphics& graphics)
{
    if (hasKeyboardFocus (false))
        BenchLook::drawFocusRing (graphics, *this, (place_ ? place_->ring : getLocalBounds()).toFloat());
}

void PartCell::focusGained (FocusChangeType cause)
{
    // A control that the keyboard reaches must be in sight: scroll the list it stands in. Under the mouse nothing may
    // move: a drag would begin with a leap.
    if (auto* viewport = findParentComponentOfClass<juce::Viewport>();
        viewport != nullptr && cause != focusChangedByMouseClick)
    {
        const auto area = viewport->getViewedComponent()->getLocalArea (this, getLocalBounds());
        const auto seen = viewport->getViewArea();
        viewport->setViewPosition (std::min (area.getX(), std::max (seen.getX(), area.getRight() - seen.getWidth())),
                                   std::min (area.getY(), std::max (seen.getY(), area.getBottom() - seen.getHeight())));
    }
    repaint();
    if (onFocus)
        onFocus();
}

void PartCell::focusLost (FocusChangeType)
{
    repaint();
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ClipButton.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"

namespace stopwright
{

namespace
{

constexpr float signWidth = 30.0f;

} // namespace

void ClipButton::setLit (int count)
{
    isLit_ = count > 0;
    setButtonText (count == 0 ? juce::String ("no stage clipped")
                              : juce::String (count) + (count == 1 ? " stage clipped" : " stages clipped"));
    setDescription (getButtonText());
    repaint();
}

void ClipButton::drawLamp (juce::Graphics& graphics,
                           const juce::Component& owner,
                           juce::Rectangle<float> area,
                           bool isLit)
{
    const auto& colours = BenchLook::paletteOf (owner);
    const float size = 12.0f * Lettering::scale();
    const auto place = area.withSizeKeepingCentre (size, size);
    if (! isLit)
    {
        graphics.setColour (colours.faintInk);
        graphics.drawEllipse (place.reduced (1.5f), 1.2f);
        return;
    }
    juce::Path triangle;
    triangle.addTriangle (place.getCentreX(), place.getY(), place.getRight(), place.getBottom(), place.getX(),
                          place.getBottom());
    graphics.setColour (colours.notice);
    graphics.fillPath (triangle);
    graphics.setColour (colours.sheet);
    graphics.fillRect (place.withSizeKeepingCentre (1.6f, 0.4f * size).translated (0.0f, 0.14f * size));
}

void ClipButton::paintButton (juce::Graphics& graphics, bool isHighlighted, bool)
{
    const auto& colours = BenchLook::paletteOf (*this);
    auto area = getLocalBounds();
    graphics.setColour (isLit_ && isHighlighted ? colours.grid : colours.sheet);
    graphics.fillRect (area);
    graphics.setColour (isLit_ ? colours.notice : colours.hairline);
    graphics.drawRect (area, isLit_ ? 2 : 1);
    drawLamp (graphics, *this, area.removeFromLeft (Lettering::px (signWidth)).toFloat(), isLit_);
    graphics.setColour (isLit_ ? colours.ink : colours.faintInk);
    Lettering::draw (graphics, *this, getButtonText(), isLit_ ? Lettering::small().boldened() : Lettering::small(),
                     area);
    if (hasKeyboardFocus (false))
        BenchLook::drawFocusRing (graphics, *this, getLocalBounds().toFloat());
}

} // namespace stopwright

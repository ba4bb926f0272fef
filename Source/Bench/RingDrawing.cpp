// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/RingDrawing.h"

#include <algorithm>

namespace stopwright
{

namespace
{

juce::Point<float> onCircle (juce::Rectangle<float> square, float radius, double angle)
{
    return square.getCentre().getPointOnCircumference (radius, static_cast<float> (angle));
}

} // namespace

void drawRing (juce::Graphics& graphics, const Palette& colours, juce::Rectangle<float> square, const RingState& state)
{
    const float unit = square.getWidth() / 60.0f;
    const float outer = 0.5f * square.getWidth() - 1.0f;
    const float radius = outer - 5.0f * unit;

    const bool isQuiet = state.isQuiet && ! state.isHovered;
    graphics.setColour (state.isHovered ? colours.ink : isQuiet ? colours.grid : colours.faintInk);
    graphics.drawEllipse (square.withSizeKeepingCentre (2.0f * radius, 2.0f * radius), state.isHovered ? 1.6f : 1.0f);

    graphics.setColour (colours.faintInk);
    const float tickLength = (state.markAngles.size() > 30 ? 2.5f : 4.0f) * unit;
    if (! isQuiet)
        for (const double angle : state.markAngles)
            graphics.drawLine ({ onCircle (square, radius, angle), onCircle (square, radius + tickLength, angle) },
                               1.0f);

    if (state.differsFromSaved)
    {
        const auto at = onCircle (square, radius, state.savedAngle);
        graphics.setColour (colours.sheet);
        graphics.fillEllipse (juce::Rectangle<float> (8.0f * unit, 8.0f * unit).withCentre (at));
        graphics.setColour (colours.ink);
        graphics.drawEllipse (juce::Rectangle<float> (8.0f * unit, 8.0f * unit).withCentre (at), 1.2f);
    }

    graphics.setColour (colours.result);
    const auto tip = onCircle (square, outer, state.valueAngle);
    const auto root = onCircle (square, radius - 3.0f * unit, state.valueAngle);
    graphics.drawLine ({ root, tip }, std::max (3.0f, 4.0f * unit));
}

} // namespace stopwright

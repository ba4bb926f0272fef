// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Part.h"
#include "Tone/Wave.h"

#include <juce_graphics/juce_graphics.h>

namespace stopwright
{

/// Drawing symbols of parts, filling a square, leads to the left and right edge.
/// Source: IEC 60617, symbols for resistor (rectangle), capacitor, inductor (half circles), resistor with sliding
/// contact, make contact and amplifier; the wave inside the source circle shows its shape. Threading: message thread.
class PartSymbol
{
public:
    /// Strokes the symbol in the current colour.
    static void draw (juce::Graphics& graphics, const PartValue& part, juce::Rectangle<float> square, float thickness);
    static void draw (juce::Graphics& graphics, const Wave& wave, juce::Rectangle<float> square, float thickness);

    /// What a tremulant does to the level, through so many swings.
    static void drawSwing (juce::Graphics& graphics, juce::Rectangle<float> square, int swings, float thickness);
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/Palette.h"
#include "Circuit/Part.h"
#include "Tone/Wave.h"

#include <juce_graphics/juce_graphics.h>

namespace stopwright
{

/// The symbols of the sheet (SchematicSymbol), lying, in a square that their leads reach the edges of.
/// Threading: message thread.
class PartSymbol
{
public:
    /// Strokes the symbol in ink, with lines of that thickness.
    static void draw (juce::Graphics& graphics,
                      const Palette& palette,
                      const PartValue& part,
                      juce::Rectangle<float> square,
                      float thickness);
    static void draw (juce::Graphics& graphics,
                      const Palette& palette,
                      const Wave& wave,
                      juce::Rectangle<float> square,
                      float thickness);

    /// What a tremulant does to the level, through so many swings.
    static void drawSwing (juce::Graphics& graphics,
                           const Palette& palette,
                           juce::Rectangle<float> square,
                           int swings,
                           float thickness);
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_graphics/juce_graphics.h>

namespace stopwright
{

/// The colours of the window: paper and ink by day, the same sheet at night. No state is told by colour alone; the
/// pairs that stand side by side (result and source, notice and ink) differ in lightness by more than hue, and blue
/// against vermilion stays apart for every common kind of colour blindness.
/// Source: Okabe and Ito, "Color Universal Design", 2008, for the blue, vermilion and amber.
struct Palette
{
    juce::Colour paper;    ///< the desk: behind everything
    juce::Colour sheet;    ///< a panel
    juce::Colour ink;      ///< text and lines that matter
    juce::Colour faintInk; ///< captions, node names
    juce::Colour hairline; ///< frames
    juce::Colour grid;     ///< ruling of a plot
    juce::Colour result;   ///< what comes out of the card; the value in hand
    juce::Colour source;   ///< what goes in
    juce::Colour target;   ///< what is wished for
    juce::Colour notice;   ///< something to read
    juce::Colour focus;    ///< the control that has the keyboard

    static const Palette& day();
    static const Palette& night();
};

} // namespace stopwright

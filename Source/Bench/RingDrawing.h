// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/Palette.h"

#include <juce_graphics/juce_graphics.h>

#include <vector>

namespace stopwright
{

/// What the ring round a symbol shows. Angles in radians clockwise from the top.
struct RingState
{
    std::vector<double> markAngles;
    double valueAngle = 0.0;
    double savedAngle = 0.0;
    bool differsFromSaved = false;
    bool isHovered = false;
    bool isQuiet = false; ///< one of many on a schematic: without ticks, and faint, until it is hovered
};

/// Draws the ring: a circle with the steps as ticks, the value as a solid mark, the saved value as an open one where it
/// differs. Threading: message thread.
void drawRing (juce::Graphics& graphics, const Palette& colours, juce::Rectangle<float> square, const RingState& state);

} // namespace stopwright

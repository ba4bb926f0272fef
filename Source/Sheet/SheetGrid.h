// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/Drawing.h"

namespace stopwright
{

/// A crossing of the grid that the symbols' middles, their leads' ends and the wires of a schematic lie on.
struct GridPoint
{
    int x = 0;
    int y = 0;

    bool operator== (const GridPoint&) const = default;

    GridPoint operator+ (const GridPoint& other) const noexcept { return { x + other.x, y + other.y }; }

    GridPoint operator* (int factor) const noexcept { return { x * factor, y * factor }; }
};

/// Measures of a schematic. Lengths named "Steps" are in steps of the grid, the others in points.
struct SheetGrid
{
    static constexpr double step = 12.0;
    static constexpr int leadSteps = 2;           ///< from a symbol's middle to where its wires begin
    static constexpr double ringRadius = 24.0;    ///< of the knob around a symbol
    static constexpr double bodyReach = 17.0;     ///< half the width of a symbol's body
    static constexpr double signHalfWidth = 8.0;  ///< of the bar that stands for circuit common or a supply
    static constexpr double nameSize = 11.0;      ///< em of names and values
    static constexpr double captionSize = 9.0;    ///< em of nodes' names and of what a tap carries
    static constexpr double lineHeight = 13.0;    ///< from base line to base line in a label
    static constexpr double leastLabelWidth = 34; ///< so that turning a knob seldom moves anything
    static constexpr double margin = 18.0;        ///< around the whole sheet

    static DrawingPoint toPoints (GridPoint at) noexcept { return { at.x * step, at.y * step }; }
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/SchematicSymbol.h"

#include <initializer_list>

namespace stopwright
{

/// Collects strokes about (0, 0) and brings them to their pose and place. Threading: one thread at a time.
class SymbolPen
{
public:
    SymbolPen (SymbolPose pose, DrawingPoint middle, Ink ink) : pose_ (pose), middle_ (middle), ink_ (ink) {}

    void line (std::vector<DrawingPoint> points, double width = strokeWidth);
    void closed (std::vector<DrawingPoint> points);
    void area (std::vector<DrawingPoint> points);

    /// Angles in radians, clockwise from the right.
    void arc (DrawingPoint centre, double radius, double fromAngle, double toAngle);
    void circle (DrawingPoint centre, double radius);

    SymbolStrokes take() { return std::move (strokes_); }

    static constexpr double strokeWidth = 1.2;

private:
    DrawingPoint place (DrawingPoint at) const;
    std::vector<DrawingPoint> place (std::vector<DrawingPoint> points) const;

    SymbolPose pose_;
    DrawingPoint middle_;
    Ink ink_;
    SymbolStrokes strokes_;
};

} // namespace stopwright

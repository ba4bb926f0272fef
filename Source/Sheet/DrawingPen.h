// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/Drawing.h"

#include <string>

namespace stopwright
{

/// Puts simple shapes on a drawing, which must outlive it. Threading: [any], one thread at a time.
class DrawingPen
{
public:
    static constexpr double sourceStrength = 0.55; ///< of areas in the ink of the source

    explicit DrawingPen (Drawing& drawing) : drawing_ (drawing) {}

    void line (DrawingPoint from, DrawingPoint to, Ink ink, double width = 1.0, bool isDashed = false);
    /// A line of the ruling, upright or level: it lies behind all that is filled after it.
    void rule (DrawingPoint from, DrawingPoint to);

    void path (std::vector<DrawingPoint> points, Ink ink, double width = 1.0, bool isDashed = false);
    void frame (const DrawingBox& box, Ink ink, double width = 1.0, bool isDashed = false);
    void fill (const DrawingBox& box, Ink ink, double strength = 1.0);
    void hatch (const DrawingBox& box, Ink ink);
    void polygon (std::vector<DrawingPoint> points, Ink ink, double strength = 1.0);
    void disc (DrawingPoint centre, double radius, Ink ink);
    void ring (DrawingPoint centre, double radius, Ink ink, double width = 1.2);

    void text (DrawingPoint at,
               std::string text,
               double size,
               Ink ink,
               TextAlign align = TextAlign::left,
               bool isBold = false);

private:
    Drawing& drawing_;
};

/// `text` if it is no wider than `width` at that size, else as much of its beginning as is with "..." behind it.
/// Threading: [control].
std::string fittedText (const std::string& text, double size, bool isBold, double width);

} // namespace stopwright

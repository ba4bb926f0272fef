// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace stopwright
{

/// What a line or a text of a drawing is for. The colour that goes with it is the medium's: the window's palette by day
/// or night, ink on paper for a printed sheet.
enum class Ink
{
    ink,      ///< text and lines that matter
    faintInk, ///< captions, node names
    hairline, ///< frames
    grid,     ///< ruling of a plot
    result,   ///< what comes out of the card; the value in hand
    source,   ///< what goes in
    target,   ///< what is wished for
    notice,   ///< something to read
    sheet     ///< the paper, to cover what lies behind
};

/// x to the right, y downwards, in points: 1/72 inch on paper, one unit of length in the window at scale 1.
struct DrawingPoint
{
    double x = 0.0;
    double y = 0.0;

    bool operator== (const DrawingPoint&) const = default;
};

/// x and y of the upper left corner.
struct DrawingBox
{
    double x = 0.0;
    double y = 0.0;
    double width = 0.0;
    double height = 0.0;

    double right() const noexcept { return x + width; }

    double bottom() const noexcept { return y + height; }

    /// Boxes that only touch do not meet.
    bool meets (const DrawingBox& other) const noexcept
    {
        return x < other.right() && other.x < right() && y < other.bottom() && other.y < bottom();
    }

    bool operator== (const DrawingBox&) const = default;
};

/// A line along its points. Curves are given as points close enough to be seen as curves.
struct DrawnLine
{
    std::vector<DrawingPoint> points;
    Ink ink = Ink::ink;
    double width = 1.0;
    bool isClosed = false;
    bool isDashed = false;
};

/// A filled polygon: solid, or ruled by slanted lines so that it can be told from its neighbours in grey.
struct DrawnArea
{
    std::vector<DrawingPoint> points;
    Ink ink = Ink::ink;
    bool isHatched = false;
    double strength = 1.0; ///< 0 .. 1: how much of the ink; the rest is the sheet's colour
};

enum class TextAlign
{
    left,
    centre,
    right
};

/// One line of text; `at` is on its base line, at its left end, middle or right end as `align` says.
struct DrawnText
{
    DrawingPoint at;
    std::string text;   ///< UTF-8
    double size = 11.0; ///< height of the letters' em square
    TextAlign align = TextAlign::left;
    bool isBold = false;
    Ink ink = Ink::ink;
};

/// A picture that any medium can show: the window paints it, a file keeps it. Areas lie behind lines, lines behind texts;
/// within each, later ones lie in front. Threading: [any].
struct Drawing
{
    double width = 0.0;
    double height = 0.0;
    std::vector<DrawnArea> areas;
    std::vector<DrawnLine> lines;
    std::vector<DrawnText> texts;
};

} // namespace stopwright

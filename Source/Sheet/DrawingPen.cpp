// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/DrawingPen.h"

#include "Sheet/TextWidth.h"

#include <cmath>
#include <numbers>
#include <utility>

namespace stopwright
{

namespace
{

constexpr std::size_t cornersOfCircle = 16;

std::vector<DrawingPoint> cornersOf (const DrawingBox& box)
{
    return { { box.x, box.y }, { box.right(), box.y }, { box.right(), box.bottom() }, { box.x, box.bottom() } };
}

std::vector<DrawingPoint> circle (DrawingPoint centre, double radius)
{
    std::vector<DrawingPoint> points;
    points.reserve (cornersOfCircle);
    for (std::size_t corner = 0; corner < cornersOfCircle; ++corner)
    {
        const double angle = 2.0 * std::numbers::pi * static_cast<double> (corner) / cornersOfCircle;
        points.push_back ({ centre.x + radius * std::cos (angle), centre.y + radius * std::sin (angle) });
    }
    return points;
}

} // namespace

void DrawingPen::line (DrawingPoint from, DrawingPoint to, Ink ink, double width, bool isDashed)
{
    drawing_.lines.push_back ({ { from, to }, ink, width, false, isDashed });
}

void DrawingPen::rule (DrawingPoint from, DrawingPoint to)
{
    const bool isUpright = from.x == to.x;
    fill ({ isUpright ? std::floor (from.x) : from.x, isUpright ? from.y : std::floor (from.y),
            isUpright ? 1.0 : to.x - from.x, isUpright ? to.y - from.y : 1.0 },
          Ink::grid);
}

void DrawingPen::path (std::vector<DrawingPoint> points, Ink ink, double width, bool isDashed)
{
    drawing_.lines.push_back ({ std::move (points), ink, width, false, isDashed });
}

void DrawingPen::frame (const DrawingBox& box, Ink ink, double width, bool isDashed)
{
    drawing_.lines.push_back ({ cornersOf (box), ink, width, true, isDashed });
}

void DrawingPen::fill (const DrawingBox& box, Ink ink, double strength)
{
    drawing_.areas.push_back ({ cornersOf (box), ink, false, strength });
}

void DrawingPen::hatch (const DrawingBox& box, Ink ink)
{
    drawing_.areas.push_back ({ cornersOf (box), ink, true });
}

void DrawingPen::polygon (std::vector<DrawingPoint> points, Ink ink, double strength)
{
    drawing_.areas.push_back ({ std::move (points), ink, false, strength });
}

void DrawingPen::disc (DrawingPoint centre, double radius, Ink ink)
{
    polygon (circle (centre, radius), ink);
}

void DrawingPen::ring (DrawingPoint centre, double radius, Ink ink, double width)
{
    drawing_.lines.push_back ({ circle (centre, radius), ink, width, true, false });
}

void DrawingPen::text (DrawingPoint at, std::string text, double size, Ink ink, TextAlign align, bool isBold)
{
    drawing_.texts.push_back ({ at, std::move (text), size, align, isBold, ink });
}

std::string fittedText (const std::string& text, double size, bool isBold, double width)
{
    if (textWidth (text, size, isBold) <= width)
        return text;
    constexpr const char* dots = "...";
    std::string shortened = text;
    while (! shortened.empty() && textWidth (shortened + dots, size, isBold) > width)
    {
        while (! shortened.empty() && (static_cast<unsigned char> (shortened.back()) & 0xc0U) == 0x80U)
            shortened.pop_back();
        if (! shortened.empty())
            shortened.pop_back();
    }
    return shortened.empty() ? shortened : shortened + dots;
}

} // namespace stopwright

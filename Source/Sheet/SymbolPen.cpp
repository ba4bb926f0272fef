// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SymbolPen.h"

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double chordAngle = std::numbers::pi / 16.0;

std::vector<DrawingPoint> arcPoints (DrawingPoint centre, double radius, double fromAngle, double toAngle)
{
    const auto count = static_cast<int> (std::ceil (std::abs (toAngle - fromAngle) / chordAngle));
    std::vector<DrawingPoint> points;
    points.reserve (static_cast<std::size_t> (count) + 1);
    for (int chord = 0; chord <= count; ++chord)
    {
        const double angle = fromAngle + (toAngle - fromAngle) * chord / count;
        points.push_back ({ centre.x + radius * std::cos (angle), centre.y + radius * std::sin (angle) });
    }
    return points;
}

} // namespace

void SymbolPen::line (std::vector<DrawingPoint> points, double width)
{
    strokes_.lines.push_back ({ place (std::move (points)), ink_, width, false, false });
}

void SymbolPen::closed (std::vector<DrawingPoint> points)
{
    strokes_.lines.push_back ({ place (std::move (points)), ink_, strokeWidth, true, false });
}

void SymbolPen::area (std::vector<DrawingPoint> points)
{
    strokes_.areas.push_back ({ place (std::move (points)), ink_, false });
}

void SymbolPen::arc (DrawingPoint centre, double radius, double fromAngle, double toAngle)
{
    line (arcPoints (centre, radius, fromAngle, toAngle));
}

void SymbolPen::circle (DrawingPoint centre, double radius)
{
    auto points = arcPoints (centre, radius, 0.0, 2.0 * std::numbers::pi);
    points.pop_back();
    closed (std::move (points));
}

DrawingPoint SymbolPen::place (DrawingPoint at) const
{
    const auto posed = pose_.apply (at);
    return { posed.x + middle_.x, posed.y + middle_.y };
}

std::vector<DrawingPoint> SymbolPen::place (std::vector<DrawingPoint> points) const
{
    for (auto& point : points)
        point = place (point);
    return points;
}

} // namespace stopwright

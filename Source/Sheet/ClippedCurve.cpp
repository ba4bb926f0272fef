// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/ClippedCurve.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

/// The shares of the way between two heights, in their order along it, at which `from` to `to` is within them.
std::pair<double, double> sharesWithin (double from, double to, double top, double bottom)
{
    if (from == to)
        return from >= top && from <= bottom ? std::pair (0.0, 1.0) : std::pair (1.0, 0.0);
    const double one = (top - from) / (to - from);
    const double other = (bottom - from) / (to - from);
    return { std::max (0.0, std::min (one, other)), std::min (1.0, std::max (one, other)) };
}

} // namespace

std::vector<std::vector<DrawingPoint>> clippedCurve (const std::vector<DrawingPoint>& points, double top, double bottom)
{
    std::vector<std::vector<DrawingPoint>> pieces;
    std::vector<DrawingPoint> piece;
    for (std::size_t index = 1; index < points.size(); ++index)
    {
        const auto& from = points[index - 1];
        const auto& to = points[index];
        const auto [enter, leave] = sharesWithin (from.y, to.y, top, bottom);
        if (enter >= leave)
            continue;
        const auto at = [&, &start = from, &end = to] (double share)
        {
            return DrawingPoint { start.x + share * (end.x - start.x),
                                  std::clamp (start.y + share * (end.y - start.y), top, bottom) };
        };
        if (piece.empty())
            piece.push_back (enter > 0.0 ? at (enter) : from);
        piece.push_back (leave < 1.0 ? at (leave) : to);
        if (leave < 1.0)
            pieces.push_back (std::exchange (piece, {}));
    }
    if (! piece.empty())
        pieces.push_back (std::move (piece));
    return pieces;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SchematicLayout.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stopwright
{

namespace
{

double distance (DrawingPoint a, DrawingPoint b)
{
    return std::hypot (a.x - b.x, a.y - b.y);
}

/// From a point to a straight piece of wire.
double distanceToSegment (DrawingPoint point, DrawingPoint from, DrawingPoint to)
{
    const double along = (to.x - from.x) * (to.x - from.x) + (to.y - from.y) * (to.y - from.y);
    if (along == 0.0)
        return distance (point, from);
    const double share = ((point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)) / along;
    const double held = std::clamp (share, 0.0, 1.0);
    return distance (point, { from.x + held * (to.x - from.x), from.y + held * (to.y - from.y) });
}

double distanceToNode (DrawingPoint point, const SheetNode& node)
{
    double nearest = std::numeric_limits<double>::infinity();
    for (const auto& wire : node.wires)
        for (std::size_t index = 1; index < wire.size(); ++index)
            nearest = std::min (nearest, distanceToSegment (point, wire[index - 1], wire[index]));
    for (const auto& sign : node.signs)
        nearest = std::min (nearest, distanceToSegment (point, { sign.at.x - SheetGrid::signHalfWidth, sign.at.y },
                                                        { sign.at.x + SheetGrid::signHalfWidth, sign.at.y }));
    return nearest;
}

bool isIn (const DrawingBox& box, DrawingPoint point)
{
    return point.x >= box.x && point.x < box.right() && point.y >= box.y && point.y < box.bottom();
}

/// How far a point lies in a direction, and how far aside.
struct Offset
{
    double along = 0.0;
    double aside = 0.0;
};

Offset offset (DrawingPoint from, DrawingPoint to, SheetDirection direction)
{
    const double x = to.x - from.x;
    const double y = to.y - from.y;
    switch (direction)
    {
        case SheetDirection::left:
            return { -x, std::abs (y) };
        case SheetDirection::right:
            return { x, std::abs (y) };
        case SheetDirection::up:
            return { -y, std::abs (x) };
        case SheetDirection::down:
            break;
    }
    return { y, std::abs (x) };
}

} // namespace

const SheetItem* SchematicLayout::findItem (SheetItemKind kind, std::size_t index) const noexcept
{
    const auto at = std::find_if (items.begin(), items.end(),
                                  [&] (const SheetItem& item) { return item.kind == kind && item.index == index; });
    return at == items.end() ? nullptr : &*at;
}

const SheetNode* SchematicLayout::findNode (std::string_view name) const noexcept
{
    const auto at =
        std::find_if (nodes.begin(), nodes.end(), [&] (const SheetNode& node) { return node.name == name; });
    return at == nodes.end() ? nullptr : &*at;
}

std::optional<std::size_t> SchematicLayout::itemAt (DrawingPoint point) const noexcept
{
    for (std::size_t index = 0; index < items.size(); ++index)
        if (items[index].ringRadius > 0.0 && distance (point, items[index].middle) <= items[index].ringRadius)
            return index;
    for (std::size_t index = 0; index < items.size(); ++index)
        if (items[index].ringRadius > 0.0 && isIn (items[index].labelBox, point))
            return index;
    return std::nullopt;
}

std::optional<std::size_t> SchematicLayout::nodeAt (DrawingPoint point, double tolerance) const noexcept
{
    std::optional<std::size_t> best;
    double nearest = tolerance;
    for (std::size_t index = 0; index < nodes.size(); ++index)
        if (const double away = distanceToNode (point, nodes[index]); away < nearest || (! best && away == nearest))
        {
            nearest = away;
            best = index;
        }
    return best;
}

/// The nearest one within 45 degrees of the direction; without one, the nearest on that side.
std::optional<std::size_t> SchematicLayout::neighbour (std::size_t item, SheetDirection direction) const noexcept
{
    std::optional<std::size_t> best;
    bool isBestAhead = false;
    double nearest = std::numeric_limits<double>::infinity();
    for (std::size_t index = 0; index < items.size(); ++index)
    {
        if (index == item || items[index].ringRadius <= 0.0)
            continue;
        const auto at = offset (items[item].middle, items[index].middle, direction);
        if (at.along <= 0.0)
            continue;
        const bool isAhead = at.aside <= at.along;
        const double away = at.along + 2.0 * at.aside;
        if (! best || isAhead > isBestAhead || (isAhead == isBestAhead && away < nearest))
        {
            best = index;
            isBestAhead = isAhead;
            nearest = away;
        }
    }
    return best;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/NodeLabels.h"

#include "Sheet/TextWidth.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr double wireHalf = 1.0;
constexpr double dotHalf = 3.0;
constexpr double signHalfHeight = 2.0;
constexpr double beside = 4.0; ///< from an upright wire to its text
constexpr double above = 4.0;  ///< from a lying wire to the base line of its text
constexpr double below = 10.0;
constexpr double slide = 3.0; ///< from one tried spot to the next

struct Segment
{
    DrawingPoint from;
    DrawingPoint to;

    bool isLying() const { return from.y == to.y; }

    double length() const { return std::abs (from.x - to.x) + std::abs (from.y - to.y); }

    DrawingPoint at (double share) const
    {
        return { from.x + share * (to.x - from.x), from.y + share * (to.y - from.y) };
    }

    DrawingBox box() const
    {
        return { std::min (from.x, to.x) - wireHalf, std::min (from.y, to.y) - wireHalf,
                 std::abs (from.x - to.x) + 2.0 * wireHalf, std::abs (from.y - to.y) + 2.0 * wireHalf };
    }
};

std::vector<Segment> segmentsOf (const SheetNode& node)
{
    std::vector<Segment> segments;
    for (const auto& wire : node.wires)
        for (std::size_t point = 1; point < wire.size(); ++point)
            segments.push_back ({ wire[point - 1], wire[point] });
    return segments;
}

class NodeLabeller
{
public:
    explicit NodeLabeller (SchematicLayout& layout) : layout_ (layout), taken_ (takenBoxes (layout)) {}

    void label()
    {
        for (auto& node : layout_.nodes)
        {
            auto segments = segmentsOf (node);
            std::stable_sort (segments.begin(), segments.end(),
                              [] (const Segment& a, const Segment& b)
                              { return a.isLying() != b.isLying() ? a.isLying() : a.length() > b.length(); });
            setProbe (node, segments);
            if (isNamedBySigns (node))
                continue;
            node.label.size = SheetGrid::captionSize;
            node.label.ink = Ink::faintInk;
            if (! tryText (node, node.name, segments)
                && (node.shortName == node.name || ! tryText (node, node.shortName, segments)))
                node.label.text.clear();
        }
    }

private:
    static bool isNamedBySigns (const SheetNode& node)
    {
        return ! node.signs.empty() || node.wires.empty() || node.name == commonNode;
    }

    static void setProbe (SheetNode& node, const std::vector<Segment>& segments)
    {
        if (! node.dots.empty())
            node.probe = node.dots.front();
        else if (! segments.empty())
            node.probe = segments.front().at (0.5);
        else if (! node.signs.empty())
            node.probe = node.signs.front().at;
    }

    bool tryText (SheetNode& node, const std::string& text, const std::vector<Segment>& segments)
    {
        node.label.text = text;
        return std::ranges::any_of (segments, [&] (const Segment& segment) { return tryAlong (node, segment); });
    }

    bool tryAt (SheetNode& node, DrawingPoint at, TextAlign align)
    {
        node.label.at = at;
        node.label.align = align;
        const auto box = textBox (node.label);
        if (box.x < 0.0 || box.y < 0.0 || box.right() > layout_.width || box.bottom() > layout_.height)
            return false;
        if (std::any_of (taken_.begin(), taken_.end(), [&] (const DrawingBox& other) { return other.meets (box); }))
            return false;
        taken_.push_back (box);
        return true;
    }

    bool tryBeside (SheetNode& node, const Segment& segment, DrawingPoint at)
    {
        if (segment.isLying())
            return tryAt (node, { at.x, at.y - above }, TextAlign::centre)
                   || tryAt (node, { at.x, at.y + below }, TextAlign::centre);
        const double base = at.y + 0.35 * node.label.size;
        return tryAt (node, { at.x + beside, base }, TextAlign::left)
               || tryAt (node, { at.x - beside, base }, TextAlign::right);
    }

    /// From the middle of the segment outward.
    bool tryAlong (SheetNode& node, const Segment& segment)
    {
        const double length = segment.length();
        const auto count = static_cast<int> (length / 2.0 / slide);
        for (int step = 0; step <= count; ++step)
        {
            const double by = length > 0.0 ? step * slide / length : 0.0;
            if (tryBeside (node, segment, segment.at (0.5 - by)) || tryBeside (node, segment, segment.at (0.5 + by)))
                return true;
        }
        return false;
    }

    SchematicLayout& layout_;
    std::vector<DrawingBox> taken_;
};

} // namespace

std::vector<DrawingBox> takenBoxes (const SchematicLayout& layout)
{
    std::vector<DrawingBox> boxes;
    for (const auto& item : layout.items)
    {
        boxes.push_back (item.labelBox);
        boxes.push_back (item.body);
        if (item.ringRadius > 0.0)
            boxes.push_back ({ item.middle.x - item.ringRadius, item.middle.y - item.ringRadius, 2.0 * item.ringRadius,
                               2.0 * item.ringRadius });
    }
    for (const auto& node : layout.nodes)
    {
        for (const auto& segment : segmentsOf (node))
            boxes.push_back (segment.box());
        for (const auto& dot : node.dots)
            boxes.push_back ({ dot.x - dotHalf, dot.y - dotHalf, 2.0 * dotHalf, 2.0 * dotHalf });
        for (const auto& sign : node.signs)
        {
            boxes.push_back ({ sign.at.x - SheetGrid::signHalfWidth, sign.at.y - signHalfHeight,
                               2.0 * SheetGrid::signHalfWidth, 2.0 * signHalfHeight });
            if (! sign.name.text.empty())
                boxes.push_back (textBox (sign.name));
        }
    }
    return boxes;
}

void labelNodes (SchematicLayout& layout)
{
    NodeLabeller (layout).label();
}

} // namespace stopwright

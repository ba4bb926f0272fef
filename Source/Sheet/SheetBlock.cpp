// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SheetBlock.h"

#include "Sheet/TextWidth.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr double step = SheetGrid::step;
constexpr double ringHalf = SheetGrid::ringRadius;
constexpr double labelGap = 4.0; ///< from the ring to the label
constexpr double outputHalf = 5.0;
constexpr double barHalfHeight = 2.0;
constexpr double nameGap = 3.0; ///< from a sign's bar to its name

constexpr double clearance = 3.0; ///< points on either side of a wire
constexpr int longestSign = 7;    ///< steps from a lead to the sign of its node

enum class Side
{
    right,
    left,
    above,
    below
};

class BlockMaker
{
public:
    BlockMaker (const Card& card, const CardGraph& graph, int element, const ElementStance& stance, bool joinsRail)
        : card_ (card),
          graph_ (graph),
          element_ (graph.elements[static_cast<std::size_t> (element)])
    {
        block_.element = element;
        block_.stance = stance;
        block_.nodes = element_.nodes;
        block_.joinsRail = joinsRail;
        block_.hasRing = element_.kind != ElementKind::output;
        const double half = block_.hasRing ? SheetGrid::bodyReach : outputHalf;
        block_.body = { -half, -half, 2.0 * half, 2.0 * half };
    }

    SheetBlock make()
    {
        addSigns();
        placeLabel();
        measure();
        return std::move (block_);
    }

private:
    double reach() const { return block_.hasRing ? ringHalf : outputHalf; }

    void addSigns()
    {
        for (std::size_t lead = 0; lead < block_.nodes.size(); ++lead)
        {
            const int node = block_.nodes[lead];
            if (node < 0 || graph_.isSignal (node))
                continue;
            const auto& held = graph_.nodes[static_cast<std::size_t> (node)];
            const auto& at = block_.stance.leads[lead];
            if (block_.joinsRail && held.role == NodeRole::common && at.outward.y > 0)
                continue;
            const bool isAbove = held.role == NodeRole::named ? at.end.y < 0 : held.isAbove;
            addSign ({ node, isAbove, {}, held.role == NodeRole::common ? std::string() : held.shortName }, at);
        }
    }

    /// As near to the lead as the other leads and signs allow.
    void addSign (BlockSign sign, const SymbolLead& lead)
    {
        for (int length = 1; length <= longestSign; ++length)
        {
            sign.wire = signWire (lead, sign.isAbove, length);
            if (isSignClear (sign, lead))
                break;
        }
        block_.signs.push_back (std::move (sign));
    }

    bool isSignClear (const BlockSign& sign, const SymbolLead& own) const
    {
        for (const auto& box : signBoxes (sign))
        {
            for (const auto& lead : block_.stance.leads)
                if (lead.end != own.end && box.meets (wayOut (lead)))
                    return false;
            for (const auto& other : block_.signs)
            {
                const auto boxes = signBoxes (other);
                if (std::any_of (boxes.begin(), boxes.end(), [&] (const auto& taken) { return taken.meets (box); }))
                    return false;
            }
        }
        return true;
    }

    /// Out of the lead, then up or down to the sign; around the ring where the lead points the other way.
    static std::vector<GridPoint> signWire (const SymbolLead& lead, bool isAbove, int length)
    {
        const GridPoint toSign { 0, isAbove ? -1 : 1 };
        const bool isAway = lead.outward.y == -toSign.y;
        std::vector<GridPoint> wire { lead.end, lead.end + lead.outward * (isAway ? 1 : length) };
        if (isAway)
            wire.push_back ({ (lead.end.x > 0 ? 1 : -1) * (SheetGrid::leadSteps + 1 + length), wire.back().y });
        if (lead.outward != toSign)
            wire.push_back (wire.back() + toSign);
        return wire;
    }

    /// What a wire that leaves a lead needs.
    static DrawingBox wayOut (const SymbolLead& lead)
    {
        const auto end = SheetGrid::toPoints (lead.end);
        const auto on = SheetGrid::toPoints (lead.end + lead.outward * 2);
        return { std::min (end.x, on.x) - clearance, std::min (end.y, on.y) - clearance,
                 std::abs (end.x - on.x) + 2.0 * clearance, std::abs (end.y - on.y) + 2.0 * clearance };
    }

    std::vector<Side> sides() const
    {
        if (element_.kind == ElementKind::output)
            return { Side::right };
        const bool isAmplifier =
            element_.kind == ElementKind::part && std::holds_alternative<OpAmp> (card_.parts[element_.index].value);
        if (isAmplifier)
            return { Side::below, Side::above };
        const auto& leads = block_.stance.leads;
        const bool isStanding =
            std::any_of (leads.begin(), leads.end(), [] (const auto& lead) { return lead.outward.y != 0; });
        if (isStanding)
            return { Side::right, Side::left, Side::above, Side::below };
        return { Side::above, Side::below };
    }

    /// Beside the ring where it meets nothing, else beyond the signs.
    void placeLabel()
    {
        const auto candidates = sides();
        for (const double beyond : { 0.0, 3.0 * step, 6.0 * step })
            for (const auto side : candidates)
            {
                setLabel (side, reach() + labelGap + beyond);
                if (isLabelClear())
                    return;
            }
        setLabel (candidates.front(), reach() + labelGap);
    }

    void setLabel (Side side, double gap)
    {
        const auto lines = labelLines (card_, element_);
        const double height = SheetGrid::lineHeight * static_cast<double> (lines.size());
        const double top = side == Side::above ? -gap + 1.0 - height : side == Side::below ? gap - 1.0 : -height / 2.0;
        const auto align = side == Side::right  ? TextAlign::left
                           : side == Side::left ? TextAlign::right
                                                : TextAlign::centre;
        const double x = side == Side::right ? gap : side == Side::left ? -gap : 0.0;
        block_.label.clear();
        double width = block_.hasRing ? SheetGrid::leastLabelWidth : 0.0;
        for (std::size_t line = 0; line < lines.size(); ++line)
        {
            const double size = lines[line].isCaption ? SheetGrid::captionSize : SheetGrid::nameSize;
            const double base = top + SheetGrid::lineHeight * static_cast<double> (line) + 10.0;
            block_.label.push_back ({ { x, base },
                                      lines[line].text,
                                      size,
                                      align,
                                      lines[line].isName,
                                      lines[line].isCaption ? Ink::faintInk : Ink::ink });
            width = std::max (width, textBox (block_.label.back()).width);
        }
        const double shift = align == TextAlign::left ? 0.0 : align == TextAlign::right ? width : width / 2.0;
        block_.labelBox = { x - shift, top, width, height };
    }

    /// Whether the label keeps off the signs and the wires that leave the leads.
    bool isLabelClear() const
    {
        const auto meets = [&] (const DrawingBox& box) { return box.meets (block_.labelBox); };
        for (const auto& sign : block_.signs)
        {
            const auto boxes = signBoxes (sign);
            if (std::any_of (boxes.begin(), boxes.end(), meets))
                return false;
        }
        return std::none_of (block_.stance.leads.begin(), block_.stance.leads.end(),
                             [&] (const SymbolLead& lead) { return meets (wayOut (lead)); });
    }

    void include (const DrawingBox& box)
    {
        const auto steps = [] (double points)
        { return std::max (0, static_cast<int> (std::ceil (points / step - 1e-9))); };
        block_.left = std::max (block_.left, steps (-box.x));
        block_.right = std::max (block_.right, steps (box.right()));
        block_.top = std::max (block_.top, steps (-box.y));
        block_.bottom = std::max (block_.bottom, steps (box.bottom()));
    }

    void measure()
    {
        include (block_.body);
        if (block_.hasRing)
            include ({ -ringHalf, -ringHalf, 2.0 * ringHalf, 2.0 * ringHalf });
        const bool isLabelAside = block_.labelBox.x >= ringHalf || block_.labelBox.right() <= -ringHalf;
        if (! isLabelAside)
            include (block_.labelBox);
        for (const auto& sign : block_.signs)
            for (const auto& box : signBoxes (sign))
                include (box);
        block_.clearLeft = block_.left;
        block_.clearRight = block_.right;
        include (block_.labelBox);
    }

    const Card& card_;
    const CardGraph& graph_;
    const GraphElement& element_;
    SheetBlock block_;
};

} // namespace

SheetBlock
    makeBlock (const Card& card, const CardGraph& graph, int element, const ElementStance& stance, bool joinsRail)
{
    return BlockMaker (card, graph, element, stance, joinsRail).make();
}

DrawnText signText (const BlockSign& sign)
{
    const auto foot = SheetGrid::toPoints (sign.wire.back());
    const double size = SheetGrid::captionSize;
    const double base = sign.isAbove ? foot.y - barHalfHeight - nameGap : foot.y + barHalfHeight + nameGap + 0.8 * size;
    return { { foot.x, base }, sign.name, size, TextAlign::centre, false, Ink::ink };
}

std::vector<DrawingBox> signBoxes (const BlockSign& sign)
{
    const auto foot = SheetGrid::toPoints (sign.wire.back());
    const double half = SheetGrid::signHalfWidth;
    std::vector<DrawingBox> boxes { { foot.x - half, foot.y - barHalfHeight, 2.0 * half, 2.0 * barHalfHeight } };
    for (std::size_t point = 1; point < sign.wire.size(); ++point)
    {
        const auto from = SheetGrid::toPoints (sign.wire[point - 1]);
        const auto to = SheetGrid::toPoints (sign.wire[point]);
        boxes.push_back ({ std::min (from.x, to.x) - 1.0, std::min (from.y, to.y) - 1.0, std::abs (from.x - to.x) + 2.0,
                           std::abs (from.y - to.y) + 2.0 });
    }
    if (! sign.name.empty())
        boxes.push_back (textBox (signText (sign)));
    return boxes;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SchematicLayout.h"

#include "Sheet/IslandSheet.h"
#include "Sheet/NodeLabels.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr int islandGap = 3;     ///< steps between what is not joined
constexpr int leastWidth = 30;   ///< steps before loose parts begin a new line
constexpr int tangleWidth = 150; ///< steps before parts begin a new line whose nodes are told by name

class LayoutMaker
{
public:
    explicit LayoutMaker (const Card& card)
        : card_ (card),
          graph_ (graphOf (card)),
          effort_ (LayoutEffort::forElements (graph_.elements.size()))
    {}

    SchematicLayout make()
    {
        layOut();
        start();
        for (const auto& sheet : sheets_)
        {
            for (const auto& block : sheet.blocks)
                addBlock (block);
            for (const auto& wires : sheet.wires.wires)
                addWires (wires);
            if (sheet.wires.hasRail)
                common().signs.push_back ({ toPoints (sheet.wires.railSign), false, {} });
        }
        measure();
        labelNodes (layout_);
        return std::move (layout_);
    }

private:
    /// The first island is laid out last: its output stands to the right of all others.
    void layOut()
    {
        int width = leastWidth;
        std::vector<IslandSheet> others;
        for (std::size_t index = 1; index < graph_.islands.size(); ++index)
        {
            others.push_back (layOut (graph_.islands[index], 0));
            width = std::max (width, others.back().high.x - others.back().low.x);
        }
        if (! graph_.loose.empty())
            others.push_back (layOutInLines (card_, graph_, graph_.loose, width));
        int widest = 0;
        for (const auto& sheet : others)
            widest = std::max (widest, sheet.high.x - sheet.low.x);
        if (! graph_.islands.empty())
            sheets_.push_back (layOut (graph_.islands.front(), widest));
        std::move (others.begin(), others.end(), std::back_inserter (sheets_));
        int top = 0;
        for (auto& sheet : sheets_)
        {
            shift (sheet, { -sheet.low.x, top - sheet.low.y });
            top = sheet.high.y + islandGap;
        }
    }

    /// With wires where that does not cost too much, else with the names of its nodes at all leads.
    IslandSheet layOut (const std::vector<int>& island, int outputAt)
    {
        if (! effort_.isSpent())
            if (auto sheet = layOutIsland (card_, graph_, island, outputAt, effort_))
                return std::move (*sheet);
        for (const int element : island)
            for (const int node : graph_.elements[static_cast<std::size_t> (element)].nodes)
                if (graph_.isSignal (node))
                    graph_.nodes[static_cast<std::size_t> (node)].role = NodeRole::named;
        return layOutInLines (card_, graph_, island, tangleWidth);
    }

    void start()
    {
        const auto tapCount = card_.taps.size();
        layout_.items.resize (graph_.elements.size());
        for (std::size_t tap = 0; tap < tapCount; ++tap)
            layout_.items[tap] = { SheetItemKind::tap, tap, card_.taps[tap].name, {}, {}, {}, 0.0, {}, {}, {} };
        for (std::size_t part = 0; part < card_.parts.size(); ++part)
            layout_.items[tapCount + part] = {
                SheetItemKind::part, part, card_.parts[part].name, {}, {}, {}, 0.0, {}, {}, {}
            };
        if (layout_.items.size() > tapCount + card_.parts.size())
            layout_.items.back().kind = SheetItemKind::output;
        layout_.nodes.reserve (graph_.nodes.size());
        for (const auto& node : graph_.nodes)
            layout_.nodes.push_back ({ node.name, {}, {}, {}, node.shortName, {}, {} });
    }

    static DrawingPoint toPoints (GridPoint at)
    {
        const auto point = SheetGrid::toPoints (at);
        return { point.x + SheetGrid::margin, point.y + SheetGrid::margin };
    }

    SheetItem& itemOf (const GraphElement& element)
    {
        switch (element.kind)
        {
            case ElementKind::tap:
                return layout_.items[element.index];
            case ElementKind::part:
                return layout_.items[card_.taps.size() + element.index];
            case ElementKind::output:
                break;
        }
        return layout_.items.back();
    }

    SheetNode& common()
    {
        return *std::find_if (layout_.nodes.begin(), layout_.nodes.end(),
                              [] (const SheetNode& node) { return node.name == commonNode; });
    }

    static DrawnText moved (DrawnText text, DrawingPoint by)
    {
        text.at = { text.at.x + by.x, text.at.y + by.y };
        return text;
    }

    static DrawingBox moved (DrawingBox box, DrawingPoint by)
    {
        return { box.x + by.x, box.y + by.y, box.width, box.height };
    }

    void addBlock (const SheetBlock& block)
    {
        auto& item = itemOf (graph_.elements[static_cast<std::size_t> (block.element)]);
        item.middle = toPoints (block.at);
        item.pose = block.stance.pose;
        item.body = moved (block.body, item.middle);
        item.ringRadius = block.hasRing ? SheetGrid::ringRadius : 0.0;
        item.labelBox = moved (block.labelBox, item.middle);
        for (std::size_t lead = 0; lead < block.nodes.size(); ++lead)
        {
            const int node = block.nodes[lead];
            item.terminals.push_back (
                { toPoints (block.at + block.stance.leads[lead].end),
                  node < 0 ? std::string() : graph_.nodes[static_cast<std::size_t> (node)].name });
        }
        for (const auto& line : block.label)
            item.label.push_back (moved (line, item.middle));
        for (const auto& sign : block.signs)
            addSign (block, sign);
    }

    void addSign (const SheetBlock& block, const BlockSign& sign)
    {
        auto& node = layout_.nodes[static_cast<std::size_t> (sign.node)];
        std::vector<DrawingPoint> wire;
        wire.reserve (sign.wire.size());
        for (const auto& point : sign.wire)
            wire.push_back (toPoints (block.at + point));
        const auto foot = wire.back();
        node.wires.push_back (std::move (wire));
        auto name = signText (sign);
        node.signs.push_back ({ foot, sign.isAbove, moved (std::move (name), toPoints (block.at)) });
    }

    void addWires (const NodeWires& wires)
    {
        auto& node = layout_.nodes[static_cast<std::size_t> (wires.node)];
        for (const auto& line : wires.shape.lines)
        {
            std::vector<DrawingPoint> points;
            points.reserve (line.size());
            for (const auto& point : line)
                points.push_back (toPoints (point));
            node.wires.push_back (std::move (points));
        }
        for (const auto& dot : wires.shape.dots)
            node.dots.push_back (toPoints (dot));
    }

    /// With the margin, in which node names may stand too.
    void measure()
    {
        for (const auto& sheet : sheets_)
        {
            const auto corner = toPoints (sheet.high);
            layout_.width = std::max (layout_.width, corner.x);
            layout_.height = std::max (layout_.height, corner.y);
        }
        layout_.width += SheetGrid::margin;
        layout_.height += SheetGrid::margin;
    }

    const Card& card_;
    CardGraph graph_;
    LayoutEffort effort_;
    std::vector<IslandSheet> sheets_;
    SchematicLayout layout_;
};

} // namespace

SchematicLayout layOutSchematic (const Card& card)
{
    return LayoutMaker (card).make();
}

} // namespace stopwright

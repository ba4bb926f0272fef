// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/IslandWires.h"

#include "Sheet/WireRouter.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace stopwright
{

namespace
{

constexpr int border = 4;         ///< steps around the blocks for wires that go round
constexpr double clearance = 3.0; ///< points between a wire and a text

class WireLayer
{
public:
    WireLayer (const CardGraph& graph, const IslandBlocks& island, const BlockSpacing& spacing)
        : graph_ (graph),
          island_ (island),
          spacing_ (spacing),
          grid_ (makeGrid())
    {}

    std::optional<IslandWires> lay (bool isLastTry, LayoutEffort& effort)
    {
        for (const auto& block : island_.blocks)
            blockOut (block);
        layRail();
        collectNets();
        if (! WireRouter (grid_, nets_, effort).route() && (! isLastTry || effort.isSpent()))
            return std::nullopt;
        gather();
        return std::move (found_);
    }

private:
    WireGrid makeGrid()
    {
        GridPoint low { std::numeric_limits<int>::max(), std::numeric_limits<int>::max() };
        GridPoint high { std::numeric_limits<int>::min(), std::numeric_limits<int>::min() };
        for (const auto& block : island_.blocks)
        {
            low = { std::min (low.x, block.at.x - block.left), std::min (low.y, block.at.y - block.top) };
            high = { std::max (high.x, block.at.x + block.right), std::max (high.y, block.at.y + block.bottom) };
        }
        high.y = std::max (high.y, spacing_.rail + 1);
        origin_ = { low.x - border, low.y - border };
        return { high.x - low.x + 2 * border + 1, high.y - low.y + 2 * border + 1 };
    }

    GridPoint onGrid (GridPoint at) const { return { at.x - origin_.x, at.y - origin_.y }; }

    GridPoint offGrid (GridPoint at) const { return at + origin_; }

    /// Keeps wires off every point of a box measured from the middle of a block.
    void blockBox (const SheetBlock& block, const DrawingBox& box, double around)
    {
        const auto first = [] (double points) { return static_cast<int> (std::ceil (points / SheetGrid::step)); };
        const auto last = [] (double points) { return static_cast<int> (std::floor (points / SheetGrid::step)); };
        for (int y = first (box.y - around); y <= last (box.bottom() + around); ++y)
            for (int x = first (box.x - around); x <= last (box.right() + around); ++x)
                grid_.block (onGrid (block.at + GridPoint { x, y }));
    }

    void blockOut (const SheetBlock& block)
    {
        const double reach = block.hasRing ? SheetGrid::ringRadius : SheetGrid::step;
        blockBox (block, { -reach, -reach, 2.0 * reach, 2.0 * reach }, 0.0);
        blockBox (block, block.labelBox, clearance);
        for (const auto& sign : block.signs)
            for (const auto& box : signBoxes (sign))
                blockBox (block, box, clearance);
    }

    /// Common's net is numbered behind the others.
    int railNet() const { return static_cast<int> (graph_.nodes.size()); }

    void layRail()
    {
        std::vector<GridPoint> ends;
        for (const auto& block : island_.blocks)
            for (std::size_t lead = 0; block.joinsRail && lead < block.nodes.size(); ++lead)
                if (block.nodes[lead] >= 0 && block.stance.leads[lead].outward.y > 0
                    && graph_.nodes[static_cast<std::size_t> (block.nodes[lead])].role == NodeRole::common)
                    ends.push_back (onGrid (block.at + block.stance.leads[lead].end));
        if (ends.empty())
            return;
        const int level = onGrid ({ 0, spacing_.rail }).y;
        const auto [left, right] =
            std::minmax_element (ends.begin(), ends.end(), [] (const auto& a, const auto& b) { return a.x < b.x; });
        for (const auto& end : ends)
        {
            grid_.setPin (end, railNet());
            for (int y = end.y; y < level; ++y)
                grid_.setNet (grid_.indexOf ({ end.x, y }), 1, railNet());
        }
        for (int x = left->x; x < right->x; ++x)
            grid_.setNet (grid_.indexOf ({ x, level }), 0, railNet());
        found_.hasRail = true;
        found_.railSign = offGrid ({ left->x, level + 1 });
        grid_.setNet (grid_.indexOf ({ left->x, level }), 1, railNet());
        for (int x = -1; x <= 1; ++x)
            grid_.block ({ left->x + x, level + 1 });
    }

    void collectNets()
    {
        std::map<int, WireNet> byNode;
        for (const auto& block : island_.blocks)
            for (std::size_t lead = 0; lead < block.nodes.size(); ++lead)
                if (graph_.isSignal (block.nodes[lead]))
                {
                    auto& net = byNode[block.nodes[lead]];
                    net.pins.push_back (onGrid (block.at + block.stance.leads[lead].end));
                    net.exits.push_back (net.pins.back() + block.stance.leads[lead].outward);
                    if (block.stance.leads[lead].outward.y == 0)
                        net.lines.push_back (net.pins.back().y);
                    else
                        net.columns.push_back (net.pins.back().x);
                }
        nets_.reserve (byNode.size());
        for (auto& [node, net] : byNode)
        {
            std::stable_sort (net.pins.begin(), net.pins.end(),
                              [] (const auto& a, const auto& b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
            const auto column = static_cast<std::size_t> (island_.uprightColumns[static_cast<std::size_t> (node)]);
            net.columns.push_back (onGrid ({ spacing_.columns[column], 0 }).x);
            nodes_.push_back (node);
            nets_.push_back (std::move (net));
        }
    }

    void gather()
    {
        for (std::size_t net = 0; net < nets_.size(); ++net)
            add (nodes_[net], static_cast<int> (net));
        if (found_.hasRail)
        {
            const auto common = std::find_if (graph_.nodes.begin(), graph_.nodes.end(),
                                              [] (const GraphNode& node) { return node.role == NodeRole::common; });
            add (static_cast<int> (common - graph_.nodes.begin()), railNet());
        }
    }

    void add (int node, int net)
    {
        auto shape = wireShape (grid_, net);
        for (auto& line : shape.lines)
            for (auto& point : line)
                point = offGrid (point);
        for (auto& dot : shape.dots)
            dot = offGrid (dot);
        found_.wires.push_back ({ node, std::move (shape) });
    }

    const CardGraph& graph_;
    const IslandBlocks& island_;
    const BlockSpacing& spacing_;
    GridPoint origin_;
    WireGrid grid_;
    std::vector<int> nodes_;
    std::vector<WireNet> nets_;
    IslandWires found_;
};

} // namespace

std::optional<IslandWires> layWires (const CardGraph& graph,
                                     const IslandBlocks& island,
                                     const BlockSpacing& spacing,
                                     bool isLastTry,
                                     LayoutEffort& effort)
{
    return WireLayer (graph, island, spacing).lay (isLastTry, effort);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/IslandBlocks.h"

#include "Sheet/SignalLayers.h"

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

namespace stopwright
{

namespace
{

/// A place, and which of the columns side by side there.
using ColumnKey = std::pair<int, int>;

class BlockPlacer
{
public:
    BlockPlacer (const Card& card, const CardGraph& graph, const std::vector<int>& island)
        : card_ (card),
          graph_ (graph),
          stances_ (graph.elements.size())
    {
        const auto layers = signalLayers (card, graph, island);
        for (const int element : island)
            stances_[static_cast<std::size_t> (element)] =
                stanceOf (card, graph, layers, graph.elements[static_cast<std::size_t> (element)]);
        plan_ = rowPlanOf (card, graph, island, layers, stances_);
        rows_ = searchRows (plan_);
    }

    IslandBlocks make()
    {
        for (std::size_t index = 0; index < plan_.items.size(); ++index)
            if (plan_.items[index].element != RowItem::noElement)
                place (plan_.items[index].element, plan_.items[index].place, rows_.itemRows[index],
                       rows_.isFlipped[index]);
        for (std::size_t index = 0; index < plan_.hangers.size(); ++index)
        {
            const auto& hanger = plan_.hangers[index];
            const int at = 2 * plan_.layers[static_cast<std::size_t> (hanger.node)];
            auto& taken = taken_[{ at, rows_.hangerRows[index] }];
            taken = std::max (taken, isInSeveralRows (hanger.node) && ! hasEnd (hanger.node) ? 1 : 0);
            place (hanger.element, at, rows_.hangerRows[index], false);
        }
        numberColumns();
        joinRail();
        found_.rowCount = rows_.rowCount;
        return std::move (found_);
    }

private:
    /// Whether a transistor's lead runs along the node's upright.
    bool hasEnd (int node) const
    {
        return std::any_of (plan_.items.begin(), plan_.items.end(),
                            [&] (const RowItem& item)
                            {
                                return std::any_of (item.arms.begin(), item.arms.end(),
                                                    [&] (const RowArm& arm) {
                                                        return arm.node == node && arm.isEnd()
                                                               && item.place == arm.nodePlace;
                                                    });
                            });
    }

    /// Whether the node needs an upright. What hangs from it then stands beside the upright, so that never four wires
    /// meet on one dot.
    bool isInSeveralRows (int node) const
    {
        int highest = std::numeric_limits<int>::max();
        int lowest = std::numeric_limits<int>::min();
        for (std::size_t index = 0; index < plan_.items.size(); ++index)
            for (const auto& arm : plan_.items[index].arms)
                if (arm.node == node)
                {
                    highest = std::min (highest, rows_.itemRows[index]);
                    lowest = std::max (lowest, rows_.itemRows[index]);
                }
        return highest < lowest;
    }

    void place (int element, int at, int row, bool isFlipped)
    {
        auto stance = stances_[static_cast<std::size_t> (element)];
        if (isFlipped)
        {
            stance.pose.isMirrored = ! stance.pose.isMirrored;
            stance.leads = posedLeads (card_, graph_.elements[static_cast<std::size_t> (element)], stance.pose);
        }
        auto block = makeBlock (card_, graph_, element, stance, false);
        block.row = row;
        block.aside = isStandingTransistor (element, at) ? -1 : 0;
        keys_.emplace_back (at, taken_[{ at, row }]++);
        found_.blocks.push_back (std::move (block));
    }

    /// Whether it stands in the column of a node, its collector and emitter in line with the node's upright.
    bool isStandingTransistor (int index, int at) const
    {
        const auto& element = graph_.elements[static_cast<std::size_t> (index)];
        return at % 2 == 0 && element.kind == ElementKind::part
               && transistorIn (card_.parts[element.index].value) != nullptr;
    }

    void numberColumns()
    {
        std::map<ColumnKey, int> columns;
        for (const auto& key : keys_)
            columns.emplace (key, 0);
        for (const int layer : plan_.layers)
            if (layer >= 0)
                columns.emplace (ColumnKey { 2 * layer, 0 }, 0);
        int number = 0;
        for (auto& [key, column] : columns)
        {
            column = number++;
            found_.columnPlaces.push_back (key.first);
        }
        for (std::size_t index = 0; index < keys_.size(); ++index)
            found_.blocks[index].column = columns.at (keys_[index]);
        found_.uprightColumns.reserve (plan_.layers.size());
        for (const int layer : plan_.layers)
            found_.uprightColumns.push_back (layer >= 0 ? columns.at ({ 2 * layer, 0 }) : -1);
    }

    bool reachesDown (const SheetBlock& block) const
    {
        for (std::size_t lead = 0; lead < block.nodes.size(); ++lead)
            if (block.nodes[lead] >= 0 && block.stance.leads[lead].outward.y > 0
                && graph_.nodes[static_cast<std::size_t> (block.nodes[lead])].role == NodeRole::common)
                return true;
        return false;
    }

    /// What reaches down to common in the lowest row shares a rail, if it is more than one.
    void joinRail()
    {
        std::vector<SheetBlock*> joined;
        for (auto& block : found_.blocks)
            if (block.row == rows_.rowCount - 1 && reachesDown (block))
                joined.push_back (&block);
        if (joined.size() < 2)
            return;
        for (auto* block : joined)
        {
            const auto old = *block;
            *block = makeBlock (card_, graph_, old.element, old.stance, true);
            block->row = old.row;
            block->column = old.column;
            block->aside = old.aside;
        }
    }

    const Card& card_;
    const CardGraph& graph_;
    std::vector<ElementStance> stances_;
    RowPlan plan_;
    RowLayout rows_;
    std::vector<ColumnKey> keys_;
    std::map<ColumnKey, int> taken_; ///< blocks per place and row
    IslandBlocks found_;
};

} // namespace

IslandBlocks islandBlocks (const Card& card, const CardGraph& graph, const std::vector<int>& island)
{
    return BlockPlacer (card, graph, island).make();
}

} // namespace stopwright

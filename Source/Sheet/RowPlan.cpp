// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/RowPlan.h"

#include <algorithm>
#include <optional>

namespace stopwright
{

namespace
{

constexpr int tapPlace = -3;
constexpr int inputRise = 20; ///< of an op-amp's inputs

class PlanMaker
{
public:
    PlanMaker (const Card& card,
               const CardGraph& graph,
               const std::vector<int>& layers,
               const std::vector<ElementStance>& stances)
        : card_ (card),
          graph_ (graph),
          stances_ (stances)
    {
        plan_.layers = layers;
        plan_.lastPlace = 2 * (*std::max_element (layers.begin(), layers.end())) + 2;
    }

    RowPlan make (const std::vector<int>& island)
    {
        for (const int element : island)
            add (element);
        for (std::size_t node = 0; node < plan_.layers.size(); ++node)
            if (plan_.layers[node] >= 0 && ! isHeld (static_cast<int> (node)))
                addHolder (static_cast<int> (node));
        findDrivers();
        return std::move (plan_);
    }

private:
    int placeOf (int node) const { return 2 * plan_.layers[static_cast<std::size_t> (node)]; }

    void add (int index)
    {
        const auto& element = graph_.elements[static_cast<std::size_t> (index)];
        const auto& stance = stances_[static_cast<std::size_t> (index)];
        if (stance.stance == Stance::across)
            addItem (index, element, stance);
        else
        {
            const auto node = std::find_if (element.nodes.begin(), element.nodes.end(),
                                            [&] (int candidate) { return graph_.isSignal (candidate); });
            plan_.hangers.push_back ({ index, *node, stance.stance == Stance::standing });
        }
    }

    void addItem (int index, const GraphElement& element, const ElementStance& stance)
    {
        RowItem item;
        item.element = index;
        item.isAmplifier =
            element.kind == ElementKind::part && std::holds_alternative<OpAmp> (card_.parts[element.index].value);
        item.canFlip = item.isAmplifier && graph_.isSignal (element.nodes[0]) && graph_.isSignal (element.nodes[1]);
        item.isOutput = element.kind == ElementKind::output;
        for (std::size_t lead = 0; lead < element.nodes.size(); ++lead)
            if (graph_.isSignal (element.nodes[lead]))
                item.arms.push_back ({ element.nodes[lead], placeOf (element.nodes[lead]), rise (stance.leads[lead]) });
        item.place = element.kind == ElementKind::tap      ? tapPlace
                     : element.kind == ElementKind::output ? plan_.lastPlace
                     : isTransistor (element) && uprightPlace (element)
                         ? *uprightPlace (element)
                         : placeBetween (element, stance, item.isAmplifier);
        close (item);
    }

    bool isTransistor (const GraphElement& element) const
    {
        return element.kind == ElementKind::part && transistorIn (card_.parts[element.index].value) != nullptr;
    }

    /// The place of the collector's or emitter's node, if it lies to the right of the base's.
    std::optional<int> uprightPlace (const GraphElement& element) const
    {
        const int least = graph_.isSignal (element.nodes[1]) ? placeOf (element.nodes[1]) : -1;
        std::optional<int> best;
        for (const int node : { element.nodes[0], element.nodes[2] })
            if (graph_.isSignal (node) && placeOf (node) > least)
                best = std::min (best.value_or (placeOf (node)), placeOf (node));
        return best;
    }

    void findDrivers()
    {
        for (auto& output : plan_.items)
            for (std::size_t index = 0; output.isOutput && index < plan_.items.size(); ++index)
            {
                const auto& item = plan_.items[index];
                if (item.isAmplifier
                    && graph_.elements[static_cast<std::size_t> (item.element)].nodes[2] == output.arms.front().node)
                    output.driver = static_cast<int> (index);
            }
    }

    static int rise (const SymbolLead& lead)
    {
        if (lead.outward.y != 0)
            return lead.outward.y * RowArm::endRise;
        return lead.end.y * inputRise;
    }

    /// The innermost layers at the left and right of an element, and the outermost ones of leads that leave upward or
    /// downward.
    struct Sides
    {
        std::optional<int> left;
        std::optional<int> right;
        std::optional<int> lowest;
        std::optional<int> highest;
    };

    Sides sidesOf (const GraphElement& element, const ElementStance& stance, bool isAmplifier) const
    {
        Sides sides;
        for (std::size_t lead = 0; lead < element.nodes.size(); ++lead)
        {
            const int node = element.nodes[lead];
            const bool isFedBack = isAmplifier && lead < 2 && node == element.nodes[2];
            if (! graph_.isSignal (node) || isFedBack)
                continue;
            const int layer = plan_.layers[static_cast<std::size_t> (node)];
            const int side = stance.leads[lead].outward.x;
            if (side < 0)
                sides.left = std::max (sides.left.value_or (layer), layer);
            else if (side > 0)
                sides.right = std::min (sides.right.value_or (layer), layer);
            else
            {
                sides.lowest = std::min (sides.lowest.value_or (layer), layer);
                sides.highest = std::max (sides.highest.value_or (layer), layer);
            }
        }
        return sides;
    }

    /// The place between the nodes at the left and those at the right; in the middle for a part of two leads, next to
    /// what it drives for a device.
    int placeBetween (const GraphElement& element, const ElementStance& stance, bool isAmplifier) const
    {
        const auto [left, right, lowest, highest] = sidesOf (element, stance, isAmplifier);
        if (left && right)
        {
            if (*left >= *right)
                return 2 * *left + 1;
            return isAmplifier ? 2 * *right - 1 : 2 * ((*left + *right - 1) / 2) + 1;
        }
        if (left)
            return lowest && *lowest > *left ? 2 * *lowest - 1 : 2 * *left + 1;
        if (right)
            return highest && *highest < *right ? 2 * *highest + 1 : 2 * *right - 1;
        return 2 * std::max (lowest.value_or (0), highest.value_or (0) - 1) + 1;
    }

    bool isHeld (int node) const
    {
        return std::any_of (plan_.items.begin(), plan_.items.end(),
                            [&] (const RowItem& item) {
                                return std::any_of (item.arms.begin(), item.arms.end(),
                                                    [&] (const RowArm& arm) { return arm.node == node; });
                            });
    }

    void addHolder (int node)
    {
        RowItem item;
        item.place = placeOf (node);
        item.arms.push_back ({ node, item.place, 0 });
        close (item);
    }

    void close (RowItem& item)
    {
        item.from = item.to = item.place;
        for (const auto& arm : item.arms)
        {
            item.from = std::min (item.from, arm.nodePlace);
            item.to = std::max (item.to, arm.nodePlace);
        }
        plan_.items.push_back (std::move (item));
    }

    const Card& card_;
    const CardGraph& graph_;
    const std::vector<ElementStance>& stances_;
    RowPlan plan_;
};

} // namespace

RowPlan rowPlanOf (const Card& card,
                   const CardGraph& graph,
                   const std::vector<int>& island,
                   const std::vector<int>& layers,
                   const std::vector<ElementStance>& stances)
{
    return PlanMaker (card, graph, layers, stances).make (island);
}

} // namespace stopwright

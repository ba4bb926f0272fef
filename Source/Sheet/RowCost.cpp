// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/RowCost.h"

#include <algorithm>
#include <cstdlib>
#include <limits>

namespace stopwright
{

namespace
{

constexpr int rowUnits = 100; ///< of a rise
constexpr long onOneSpot = 6000;
constexpr long inTheWay = 2500;
constexpr long crossing = 1000;
constexpr long perRowOfWire = 20;
constexpr long perRowOfSheet = 14;
constexpr long awayFromRail = 12;
constexpr long outputAside = 6;
constexpr long besideEnd = 60;
constexpr long feedbackBelow = 15;
constexpr long flipped = 3;
constexpr long perTapOutOfOrder = 2;

} // namespace

RowCost::RowCost (const RowPlan& plan) : plan_ (plan), spanOfNode_ (plan.layers.size(), -1)
{
    spans_.reserve (plan.layers.size());
    for (std::size_t node = 0; node < plan.layers.size(); ++node)
        if (plan.layers[node] >= 0)
        {
            spanOfNode_[node] = static_cast<int> (spans_.size());
            Span span;
            span.node = static_cast<int> (node);
            span.place = 2 * plan.layers[node];
            for (const auto& hanger : plan.hangers)
                if (hanger.node == span.node)
                    ++(hanger.isAbove ? span.hangersAbove : span.hangersBelow);
            spans_.push_back (span);
        }
    pairUp();
}

void RowCost::pairUp()
{
    const auto shared = [] (const RowItem& device, const RowItem& item)
    {
        return std::count_if (item.arms.begin(), item.arms.end(),
                              [&] (const RowArm& arm)
                              {
                                  return std::any_of (device.arms.begin(), device.arms.end(),
                                                      [&] (const RowArm& other) { return other.node == arm.node; });
                              });
    };
    for (std::size_t device = 0; device < plan_.items.size(); ++device)
        for (std::size_t item = 0; item < plan_.items.size(); ++item)
        {
            if (item == device)
                continue;
            for (const auto& arm : plan_.items[device].arms)
                for (const auto& other : plan_.items[item].arms)
                    if (arm.isEnd() && other.node == arm.node && other.rise == 0)
                        endPairs_.push_back ({ device, item, arm.rise < 0 });
            if (plan_.items[device].isAmplifier && ! plan_.items[item].isAmplifier
                && shared (plan_.items[device], plan_.items[item]) == 2)
                feedbackPairs_.push_back ({ device, item, true });
        }
}

long RowCost::of (const RowChoice& choice, long limit)
{
    measure (choice);
    const long cost = costOfNodes() + costOfHangers (choice) + costOfHeight() + costOfEnds (choice);
    return cost >= limit ? cost : cost + costOfItems (choice, limit - cost);
}

int RowCost::highestRow (int node) const
{
    return spans_[static_cast<std::size_t> (spanOfNode_[static_cast<std::size_t> (node)])].highestRow;
}

int RowCost::lowestRow (int node) const
{
    return spans_[static_cast<std::size_t> (spanOfNode_[static_cast<std::size_t> (node)])].lowestRow;
}

void RowCost::measure (const RowChoice& choice)
{
    for (auto& span : spans_)
    {
        span.top = span.highestRow = std::numeric_limits<int>::max();
        span.bottom = span.lowestRow = std::numeric_limits<int>::min();
    }
    for (std::size_t index = 0; index < plan_.items.size(); ++index)
        for (const auto& arm : plan_.items[index].arms)
        {
            auto& span = spans_[static_cast<std::size_t> (spanOfNode_[static_cast<std::size_t> (arm.node)])];
            const int row = choice.rows[index];
            const int at = row * rowUnits + (choice.isFlipped[index] ? -arm.rise : arm.rise);
            span.highestRow = std::min (span.highestRow, row);
            span.lowestRow = std::max (span.lowestRow, row);
            span.top = std::min (span.top, at);
            span.bottom = std::max (span.bottom, at);
        }
    for (auto& span : spans_)
    {
        if (span.hangersBelow > 0)
            span.bottom = (span.lowestRow + 1) * rowUnits;
        if (span.hangersAbove > 0)
            span.top = (span.highestRow - 1) * rowUnits;
    }
}

long RowCost::costOfItems (const RowChoice& choice, long limit) const
{
    long cost = 0;
    const auto& items = plan_.items;
    for (std::size_t index = 0; index < items.size() && cost < limit; ++index)
    {
        cost += costOfArms (items[index], choice.rows[index], choice.isFlipped[index]);
        cost += choice.isFlipped[index] ? flipped : 0;
        cost += items[index].isOutput ? costOfOutput (choice, items[index], choice.rows[index]) : 0;
        for (std::size_t other = 0; other < index; ++other)
        {
            const bool isOverlapping = items[index].from < items[other].to && items[other].from < items[index].to;
            if (choice.rows[index] == choice.rows[other] && isOverlapping)
                cost += onOneSpot;
            if (items[index].place < 0 && items[other].place < 0 && choice.rows[index] <= choice.rows[other])
                cost += perTapOutOfOrder;
        }
    }
    return cost;
}

/// The output wants the row of what drives it, or of what hangs from its node.
long RowCost::costOfOutput (const RowChoice& choice, const RowItem& output, int row) const
{
    const int wanted = output.driver != RowItem::noItem ? choice.rows[static_cast<std::size_t> (output.driver)]
                                                        : lowestRow (output.arms.front().node);
    return row == wanted ? 0 : outputAside;
}

/// What is joined to a lead that leaves upward should lie above the device, and the other way round; feedback is drawn
/// above its amplifier.
long RowCost::costOfEnds (const RowChoice& choice) const
{
    long cost = 0;
    for (const auto& pair : endPairs_)
    {
        const int below = choice.rows[pair.item] - choice.rows[pair.device];
        cost += (pair.isAbove ? below >= 0 : below <= 0) ? besideEnd : 0;
    }
    for (const auto& pair : feedbackPairs_)
        cost += choice.rows[pair.item] > choice.rows[pair.device] ? feedbackBelow : 0;
    return cost;
}

/// Crossings of the wires to the item's nodes with the uprights between.
long RowCost::costOfArms (const RowItem& item, int row, bool isFlipped) const
{
    long cost = 0;
    for (const auto& arm : item.arms)
    {
        const int from = std::min (arm.nodePlace, item.place);
        const int to = std::max (arm.nodePlace, item.place);
        const int at = row * rowUnits + (isFlipped ? -arm.rise : arm.rise);
        for (const auto& span : spans_)
            if (span.place > from && span.place < to && span.node != arm.node && span.top <= at && at <= span.bottom)
                cost += crossing;
    }
    return cost;
}

/// Nodes of one layer that overlap, and the length of the uprights.
long RowCost::costOfNodes() const
{
    long cost = 0;
    for (std::size_t index = 0; index < spans_.size(); ++index)
    {
        const auto& span = spans_[index];
        cost += perRowOfWire * (span.bottom - span.top) / rowUnits;
        for (std::size_t other = 0; other < index; ++other)
            if (span.place == spans_[other].place && span.top <= spans_[other].bottom
                && spans_[other].top <= span.bottom)
                cost += inTheWay;
    }
    return cost;
}

long RowCost::costOfHangers (const RowChoice& choice) const
{
    int lowest = std::numeric_limits<int>::min();
    for (const auto& span : spans_)
        lowest = std::max (lowest, span.bottom);
    long cost = 0;
    for (const auto& span : spans_)
    {
        if (span.hangersBelow > 0)
        {
            cost += costOfHanger (choice, span, span.lowestRow + 1);
            cost += span.bottom < lowest ? awayFromRail : 0;
        }
        if (span.hangersAbove > 0)
            cost += costOfHanger (choice, span, span.highestRow - 1);
    }
    return cost;
}

/// Items that run over the place of a node's hangers.
long RowCost::costOfHanger (const RowChoice& choice, const Span& span, int row) const
{
    long cost = 0;
    for (std::size_t index = 0; index < plan_.items.size(); ++index)
        if (choice.rows[index] == row && plan_.items[index].from < span.place && span.place < plan_.items[index].to)
            cost += onOneSpot;
    return cost;
}

long RowCost::costOfHeight() const
{
    int top = std::numeric_limits<int>::max();
    int bottom = std::numeric_limits<int>::min();
    for (const auto& span : spans_)
    {
        top = std::min (top, span.top);
        bottom = std::max (bottom, span.bottom);
    }
    return perRowOfSheet * (bottom - top) / rowUnits;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/CardGraph.h"
#include "Sheet/ElementStance.h"

#include <vector>

namespace stopwright
{

/// The wire from an item to one of its nodes: where the node stands, and how far above (negative) or below the middle of
/// the item's row the wire runs, in hundredths of a row.
struct RowArm
{
    static constexpr int endRise = 30; ///< of leads that leave upward or downward

    int node = 0;
    int nodePlace = 0;
    int rise = 0;

    bool isEnd() const noexcept { return rise == endRise || rise == -endRise; }
};

/// Something that takes a row from one node to another. Transistors stand where the node of their collector or emitter
/// has its upright, in line with what hangs there. Places count from left to right: nodes of layer n stand at 2 n,
/// parts between layers n and n + 1 at 2 n + 1. Without an element it only holds a node that has nothing but hangers.
struct RowItem
{
    static constexpr int noElement = -1;
    static constexpr int noItem = -1;

    int element = noElement;
    int place = 0;
    std::vector<RowArm> arms;
    bool isAmplifier = false;
    bool canFlip = false;  ///< an op-amp may stand with its plus input above
    bool isOutput = false; ///< wants the row of what drives it, else the lowest row of its node
    int driver = noItem;   ///< of an output: the item of the amplifier whose output it is
    int from = 0;          ///< leftmost place it takes
    int to = 0;            ///< rightmost place it takes
};

/// A part that hangs below or stands above a node.
struct RowHanger
{
    int element = 0;
    int node = 0;
    bool isAbove = false;
};

/// What an island has to bring into rows.
struct RowPlan
{
    std::vector<int> layers; ///< per node, -1 for others'
    int lastPlace = 0;       ///< of the output
    std::vector<RowItem> items;
    std::vector<RowHanger> hangers;
};

/// `stances` of all elements of the graph. Threading: [control].
RowPlan rowPlanOf (const Card& card,
                   const CardGraph& graph,
                   const std::vector<int>& island,
                   const std::vector<int>& layers,
                   const std::vector<ElementStance>& stances);

} // namespace stopwright

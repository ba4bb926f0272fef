// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FeedbackPaths.h"

namespace stopwright
{

namespace
{

std::size_t indexOf (int node)
{
    return static_cast<std::size_t> (node);
}

/// The node that an op-amp's output or an ideal supply holds against common; common when the part holds none.
int heldNode (const Part& part, const NodeMap& nodes)
{
    if (std::holds_alternative<OpAmp> (part.value))
        return nodes.find (part.nodes[2]);
    const auto* supply = std::get_if<Supply> (&part.value);
    if (supply == nullptr || supply->seriesOhms != 0.0)
        return NodeMap::common;
    const int plus = nodes.find (part.nodes[0]);
    const int minus = nodes.find (part.nodes[1]);
    return plus == NodeMap::common ? minus : minus == NodeMap::common ? plus : NodeMap::common;
}

} // namespace

FeedbackPaths::FeedbackPaths (const Netlist& netlist, const NodeMap& nodes, PathKind kind)
    : nodes_ (nodes),
      neighbours_ (indexOf (nodes.count())),
      isHeld_ (indexOf (nodes.count()), false)
{
    const auto hold = [this] (int node)
    {
        if (node != NodeMap::common)
            isHeld_[indexOf (node)] = true;
    };
    const auto connect = [this] (int from, int to)
    {
        if (from != NodeMap::common && to != NodeMap::common)
            neighbours_[indexOf (from)].push_back (to);
    };

    for (const auto& source : netlist.sources)
        if (source.sourceOhms == 0.0)
            hold (nodes.find (source.node));
    for (const auto& part : netlist.parts)
        hold (heldNode (part, nodes));

    for (const auto& part : netlist.parts)
        for (const auto& [a, b] : conductionPaths (part, nodes, kind))
        {
            if (b == NodeMap::common || ! isHeld_[indexOf (b)])
                connect (a, b);
            if (a == NodeMap::common || ! isHeld_[indexOf (a)])
                connect (b, a);
        }
    for (const auto& part : netlist.parts)
        if (std::holds_alternative<OpAmp> (part.value))
            for (const std::size_t input : { 0U, 1U })
                connect (nodes.find (part.nodes[input]), nodes.find (part.nodes[2]));
}

bool FeedbackPaths::reaches (const Part& opAmp, std::size_t input) const
{
    const int start = nodes_.find (opAmp.nodes[2]);
    const int goal = nodes_.find (opAmp.nodes[input]);
    if (start == NodeMap::common || goal == NodeMap::common)
        return false;

    std::vector<bool> isSeen (neighbours_.size(), false);
    std::vector<int> waiting { start };
    isSeen[indexOf (start)] = true;
    while (! waiting.empty())
    {
        const int node = waiting.back();
        waiting.pop_back();
        if (node == goal)
            return true;
        for (const int next : neighbours_[indexOf (node)])
            if (! isSeen[indexOf (next)])
            {
                isSeen[indexOf (next)] = true;
                waiting.push_back (next);
            }
    }
    return false;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SignalFlow.h"

namespace stopwright
{

namespace
{

class EdgeList
{
public:
    explicit EdgeList (const CardGraph& graph) : graph_ (graph) {}

    void add (int from, int to, bool isDirected)
    {
        if (from != to && graph_.isSignal (from) && graph_.isSignal (to))
            edges.push_back ({ from, to, isDirected });
    }

    std::vector<FlowEdge> edges;

private:
    const CardGraph& graph_;
};

/// Base to collector and emitter; with the base held still, emitter to collector.
void addTransistor (EdgeList& list, const CardGraph& graph, const std::vector<int>& nodes)
{
    list.add (nodes[1], nodes[0], true);
    list.add (nodes[1], nodes[2], true);
    if (! graph.isSignal (nodes[1]))
        list.add (nodes[2], nodes[0], true);
}

} // namespace

std::vector<FlowEdge> flowEdges (const Card& card, const CardGraph& graph, const std::vector<int>& island)
{
    EdgeList list (graph);
    for (const int index : island)
    {
        const auto& element = graph.elements[static_cast<std::size_t> (index)];
        if (element.kind != ElementKind::part)
            continue;
        const auto& value = card.parts[element.index].value;
        const auto& nodes = element.nodes;
        if (std::holds_alternative<OpAmp> (value))
        {
            list.add (nodes[0], nodes[2], true);
            list.add (nodes[1], nodes[2], true);
        }
        else if (transistorIn (value) != nullptr)
            addTransistor (list, graph, nodes);
        else
            for (std::size_t lead = 1; lead < nodes.size(); ++lead)
                list.add (nodes[lead - 1], nodes[lead], false);
    }
    return list.edges;
}

} // namespace stopwright

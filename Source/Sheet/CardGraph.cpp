// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/CardGraph.h"

#include "Sheet/ShortNames.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <optional>
#include <set>

namespace stopwright
{

namespace
{

bool isDigit (char letter)
{
    return letter >= '0' && letter <= '9';
}

/// The digits at the front of a text, without leading zeros.
std::string_view leadingNumber (std::string_view text)
{
    std::size_t length = 0;
    while (length < text.size() && isDigit (text[length]))
        ++length;
    auto number = text.substr (0, length);
    while (number.size() > 1 && number.front() == '0')
        number.remove_prefix (1);
    return number;
}

struct NaturalOrder
{
    bool operator() (const std::string& name, const std::string& other) const { return comesBefore (name, other); }
};

/// The node that a supply holds against common, and whether above it.
struct HeldNode
{
    std::string name;
    bool isAbove = false;
};

std::optional<HeldNode> heldBy (const Part& part)
{
    const auto* supply = std::get_if<Supply> (&part.value);
    if (supply == nullptr || part.nodes.size() < 2)
        return std::nullopt;
    const bool isPlusCommon = part.nodes[0] == commonNode;
    if (isPlusCommon == (part.nodes[1] == commonNode))
        return std::nullopt;
    return isPlusCommon ? HeldNode { part.nodes[1], supply->volts < 0.0 }
                        : HeldNode { part.nodes[0], supply->volts >= 0.0 };
}

/// Rails: what a supply holds, unless a tap or the output is there.
std::map<std::string, bool> railsOf (const Card& card)
{
    std::map<std::string, bool> rails;
    for (const auto& part : card.parts)
        if (const auto held = heldBy (part); held && ! held->name.empty() && held->name != card.output)
            rails.emplace (held->name, held->isAbove);
    for (const auto& tap : card.taps)
        rails.erase (tap.node);
    return rails;
}

std::vector<GraphNode> nodesOf (const Card& card)
{
    std::set<std::string, NaturalOrder> names;
    for (const auto& part : card.parts)
        names.insert (part.nodes.begin(), part.nodes.end());
    for (const auto& tap : card.taps)
        names.insert (tap.node);
    names.insert (card.output);
    names.erase ("");

    const auto rails = railsOf (card);
    std::vector<GraphNode> nodes;
    nodes.reserve (names.size());
    for (const auto& name : names)
    {
        const auto rail = rails.find (name);
        const auto role = name == commonNode    ? NodeRole::common
                          : rail != rails.end() ? NodeRole::rail
                                                : NodeRole::signal;
        nodes.push_back ({ name, role, rail != rails.end() && rail->second, {} });
    }
    const auto shown = shortNames ({ names.begin(), names.end() });
    for (std::size_t node = 0; node < nodes.size(); ++node)
        nodes[node].shortName = shown[node];
    return nodes;
}

/// The indices of a list in the natural order of its names; equal names keep the order they have.
template <typename List>
std::vector<std::size_t> orderOf (const List& list)
{
    std::vector<std::size_t> order (list.size());
    std::iota (order.begin(), order.end(), std::size_t { 0 });
    std::stable_sort (order.begin(), order.end(),
                      [&] (std::size_t a, std::size_t b) { return comesBefore (list[a].name, list[b].name); });
    return order;
}

std::vector<GraphElement> elementsOf (const Card& card, const std::vector<GraphNode>& nodes)
{
    const auto find = [&] (const std::string& name)
    {
        const auto at = std::find_if (nodes.begin(), nodes.end(), [&] (const auto& node) { return node.name == name; });
        return at == nodes.end() ? -1 : static_cast<int> (at - nodes.begin());
    };
    std::vector<GraphElement> elements;
    elements.reserve (card.taps.size() + card.parts.size() + 1);
    for (const auto index : orderOf (card.taps))
        elements.push_back ({ ElementKind::tap, index, { find (card.taps[index].node) } });
    for (const auto index : orderOf (card.parts))
    {
        const auto& part = card.parts[index];
        GraphElement element { ElementKind::part, index, {} };
        for (std::size_t lead = 0; lead < leadCount (part.value); ++lead)
            element.nodes.push_back (lead < part.nodes.size() ? find (part.nodes[lead]) : -1);
        elements.push_back (std::move (element));
    }
    if (! card.output.empty())
        elements.push_back ({ ElementKind::output, 0, { find (card.output) } });
    return elements;
}

/// What hangs together: each element is joined to a signal node's first element.
std::vector<int> groupsOf (const CardGraph& graph)
{
    std::vector<int> group (graph.elements.size());
    std::iota (group.begin(), group.end(), 0);
    std::vector<int> ofNode (graph.nodes.size(), -1);
    for (std::size_t element = 0; element < graph.elements.size(); ++element)
        for (const int node : graph.elements[element].nodes)
        {
            if (! graph.isSignal (node))
                continue;
            auto& known = ofNode[static_cast<std::size_t> (node)];
            if (known < 0)
                known = group[element];
            const int from = std::max (known, group[element]);
            const int to = std::min (known, group[element]);
            std::replace (group.begin(), group.end(), from, to);
            std::replace (ofNode.begin(), ofNode.end(), from, to);
        }
    return group;
}

/// 0: with the output, 1: with taps, 2: neither.
int rankOf (const CardGraph& graph, const std::vector<int>& island)
{
    const auto has = [&] (ElementKind kind)
    {
        return std::any_of (island.begin(), island.end(),
                            [&] (int element)
                            { return graph.elements[static_cast<std::size_t> (element)].kind == kind; });
    };
    return has (ElementKind::output) ? 0 : has (ElementKind::tap) ? 1 : 2;
}

void findIslands (CardGraph& graph)
{
    const auto group = groupsOf (graph);
    std::map<int, std::vector<int>> byGroup;
    for (std::size_t element = 0; element < group.size(); ++element)
    {
        const auto& nodes = graph.elements[element].nodes;
        const bool hasSignal =
            std::any_of (nodes.begin(), nodes.end(), [&] (int node) { return graph.isSignal (node); });
        (hasSignal ? byGroup[group[element]] : graph.loose).push_back (static_cast<int> (element));
    }
    graph.islands.reserve (byGroup.size());
    for (auto& [first, island] : byGroup)
        graph.islands.push_back (std::move (island));
    std::stable_sort (graph.islands.begin(), graph.islands.end(),
                      [&] (const auto& a, const auto& b) { return rankOf (graph, a) < rankOf (graph, b); });
}

} // namespace

bool CardGraph::isSignal (int node) const
{
    return node >= 0 && nodes[static_cast<std::size_t> (node)].role == NodeRole::signal;
}

bool comesBefore (std::string_view name, std::string_view other) noexcept
{
    const auto whole = name.compare (other);
    while (! name.empty() && ! other.empty())
    {
        if (isDigit (name.front()) && isDigit (other.front()))
        {
            const auto number = leadingNumber (name);
            const auto otherNumber = leadingNumber (other);
            if (number.size() != otherNumber.size())
                return number.size() < otherNumber.size();
            if (number != otherNumber)
                return number < otherNumber;
            name.remove_prefix (static_cast<std::size_t> (number.data() + number.size() - name.data()));
            other.remove_prefix (static_cast<std::size_t> (otherNumber.data() + otherNumber.size() - other.data()));
            continue;
        }
        if (name.front() != other.front())
            return name.front() < other.front();
        name.remove_prefix (1);
        other.remove_prefix (1);
    }
    return name.empty() != other.empty() ? name.empty() : whole < 0;
}

CardGraph graphOf (const Card& card)
{
    CardGraph graph;
    graph.nodes = nodesOf (card);
    graph.elements = elementsOf (card, graph.nodes);
    findIslands (graph);
    return graph;
}

} // namespace stopwright

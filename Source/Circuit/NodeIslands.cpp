// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NodeIslands.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <numeric>

namespace stopwright
{

namespace
{

/// Disjoint sets over common (-1) and the nodes.
class NodeSets
{
public:
    explicit NodeSets (int nodeCount) : parents_ (static_cast<std::size_t> (nodeCount) + 1)
    {
        std::iota (parents_.begin(), parents_.end(), NodeMap::common);
    }

    int root (int node)
    {
        while (parent (node) != node)
        {
            parent (node) = parent (parent (node));
            node = parent (node);
        }
        return node;
    }

    /// The lower number stays the root, so common is always a root.
    void join (int a, int b)
    {
        const int rootA = root (a);
        const int rootB = root (b);
        parent (std::max (rootA, rootB)) = std::min (rootA, rootB);
    }

private:
    int& parent (int node) { return parents_[static_cast<std::size_t> (std::ptrdiff_t { node } + 1)]; }

    std::vector<int> parents_;
};

} // namespace

std::vector<std::vector<int>> nodeIslands (const Netlist& netlist, const NodeMap& nodes, PathKind kind)
{
    NodeSets sets (nodes.count());
    for (const auto& source : netlist.sources)
        sets.join (nodes.find (source.node), NodeMap::common);
    for (const auto& part : netlist.parts)
    {
        if (std::holds_alternative<OpAmp> (part.value))
            sets.join (nodes.find (part.nodes[2]), NodeMap::common);
        for (const auto& [a, b] : conductionPaths (part, nodes, kind))
            sets.join (a, b);
    }

    std::map<int, std::vector<int>> islands;
    for (int node = 0; node < nodes.count(); ++node)
        if (const int root = sets.root (node); root != NodeMap::common)
            islands[root].push_back (node);

    std::vector<std::vector<int>> list;
    list.reserve (islands.size());
    for (auto& [root, members] : islands)
        list.push_back (std::move (members));
    return list;
}

} // namespace stopwright

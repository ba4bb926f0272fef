// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

/// Numbers the nodes of a netlist as the solvers see them: nodes joined by a closed switch are one node.
///
/// Common and all that is joined to it is NodeMap::common; the others are 0 .. count() - 1 in the order in which the
/// netlist first names them (sources, then parts, then the output).
/// Threading: construct on [control]. Fails: never; parts with a wrong number of nodes are numbered all the same.
class NodeMap
{
public:
    static constexpr int common = -1;
    static constexpr int unknown = -2;

    explicit NodeMap (const Netlist& netlist);

    /// Solver nodes besides common.
    int count() const noexcept { return static_cast<int> (members_.size()); }

    /// Number of the node with this name: common, unknown, or 0 .. count() - 1.
    int find (std::string_view name) const;

    /// All names that are this one node, in order of appearance. `node` is 0 .. count() - 1.
    const std::vector<std::string>& members (int node) const { return members_[static_cast<std::size_t> (node)]; }

    /// The first of them, to stand for the node in a sentence; "0" for common.
    const std::string& nameOf (int node) const;

private:
    std::map<std::string, int, std::less<>> numbers_;
    std::vector<std::vector<std::string>> members_;
};

} // namespace stopwright

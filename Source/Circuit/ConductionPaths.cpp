// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ConductionPaths.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

bool conducts (const PartValue& value, PathKind kind)
{
    if (std::holds_alternative<Switch> (value) || std::holds_alternative<OpAmp> (value))
        return false;
    const auto* capacitor = std::get_if<Capacitor> (&value);
    return kind == PathKind::any || capacitor == nullptr || std::isfinite (capacitor->leakOhms);
}

} // namespace

std::vector<std::array<int, 2>> conductionPaths (const Part& part, const NodeMap& nodes, PathKind kind)
{
    std::vector<std::array<int, 2>> paths;
    if (! conducts (part.value, kind))
        return paths;
    for (std::size_t lead = 0; lead + 1 < part.nodes.size(); ++lead)
    {
        const std::array<int, 2> path { nodes.find (part.nodes[lead]), nodes.find (part.nodes[lead + 1]) };
        if (path[0] != path[1])
            paths.push_back (path);
    }
    return paths;
}

} // namespace stopwright

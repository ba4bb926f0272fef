// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/CardGraph.h"

#include <vector>

namespace stopwright
{

/// A way through a part from one signal node to another; a directed one leads out of a device.
struct FlowEdge
{
    int from = 0;
    int to = 0;
    bool isDirected = false;
};

/// The ways through the parts of an island. Threading: [control].
std::vector<FlowEdge> flowEdges (const Card& card, const CardGraph& graph, const std::vector<int>& island);

} // namespace stopwright

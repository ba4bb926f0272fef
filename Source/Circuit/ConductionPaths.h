// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"
#include "Circuit/NodeMap.h"

#include <array>
#include <vector>

namespace stopwright
{

enum class PathKind
{
    any,   ///< whatever carries current at some frequency
    direct ///< what carries direct current: no capacitor unless it leaks
};

/// The pairs of different solver nodes between which a part carries current. Op-amps have none (see NodeIslands and
/// FeedbackPaths); closed switches are already one node. A
/// junction counts as a path in both directions. Threading: [control].
std::vector<std::array<int, 2>> conductionPaths (const Part& part, const NodeMap& nodes, PathKind kind);

} // namespace stopwright

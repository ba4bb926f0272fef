// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/ConductionPaths.h"

#include <vector>

namespace stopwright
{

/// The groups of solver nodes that no path of `kind` joins to common. Sources and op-amp outputs join their node to
/// common; op-amp inputs join nothing. In order of their first node, each in ascending order.
/// Threading: [control].
std::vector<std::vector<int>> nodeIslands (const Netlist& netlist, const NodeMap& nodes, PathKind kind);

} // namespace stopwright

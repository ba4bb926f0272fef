// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/FindingList.h"
#include "Circuit/Netlist.h"
#include "Circuit/NodeMap.h"

namespace stopwright
{

/// Nodes whose voltage is laid down twice: two ideal taps or op-amp outputs on one node, or one of them on common, be
/// it by name or through a closed switch; op-amps whose inputs are one node.
/// Threading: [control]. Needs names and node counts to be in order.
void checkVoltageConflicts (const Netlist& netlist, const NodeMap& nodes, FindingList& findings);

} // namespace stopwright

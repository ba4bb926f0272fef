// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/FindingList.h"
#include "Circuit/Netlist.h"
#include "Circuit/NodeMap.h"

namespace stopwright
{

/// How the parts hang together: parts with all leads on one node, outputs and taps at nodes that nothing touches,
/// nodes without a path to common, leads that go nowhere, nodes without a resting voltage.
/// Threading: [control]. Needs names and node counts to be in order.
void checkConnections (const Netlist& netlist, const NodeMap& nodes, FindingList& findings);

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/FindingList.h"
#include "Circuit/Netlist.h"

namespace stopwright
{

/// Names and counts: missing or repeated names of parts and taps, wrong numbers of nodes, nodes without a name, no
/// output, more of anything than CircuitLimits allows. All other checks need these to be in order.
/// Threading: [control].
void checkNames (const Netlist& netlist, FindingList& findings);

} // namespace stopwright

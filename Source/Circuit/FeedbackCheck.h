// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/FindingList.h"
#include "Circuit/Netlist.h"
#include "Circuit/NodeMap.h"

namespace stopwright
{

/// Op-amps whose output has no way back to an input, or none for direct current.
/// Threading: [control]. Needs names and node counts to be in order.
void checkFeedback (const Netlist& netlist, const NodeMap& nodes, FindingList& findings);

} // namespace stopwright

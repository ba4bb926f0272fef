// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/FindingList.h"
#include "Circuit/Netlist.h"

namespace stopwright
{

/// Every number against ValueLimits, and the order of op-amp rails. Threading: [control].
void checkValues (const Netlist& netlist, FindingList& findings);

} // namespace stopwright

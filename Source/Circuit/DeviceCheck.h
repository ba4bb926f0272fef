// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/FindingList.h"
#include "Circuit/NodeMap.h"

namespace stopwright
{

/// Supplies and devices: errors for an ideal supply that is shorted or that closes a loop of taps, supplies and op-amp
/// outputs whose voltages are laid down already; a warning for a lead of a diode or transistor that no direct current
/// can reach. Threading: [control]. Needs readable names and nodes.
void checkDevices (const Netlist& netlist, const NodeMap& nodes, FindingList& findings);

} // namespace stopwright

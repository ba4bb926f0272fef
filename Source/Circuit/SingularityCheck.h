// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/FindingList.h"
#include "Circuit/NodalEquations.h"

namespace stopwright
{

/// Whether the nodal equations determine every voltage and current. They are looked at for two frequencies that have
/// nothing to do with the network; what neither determines is named by the null vectors of the equations.
/// Threading: [control].
void checkSingularity (const Netlist& netlist, const NodalEquations& equations, FindingList& findings);

} // namespace stopwright

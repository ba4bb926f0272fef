// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/FindingList.h"
#include "Circuit/NodalEquations.h"

namespace stopwright
{

/// What reaches the output: taps that do not (a warning), and an output that follows the rate of change of a tap, which
/// no hearing or measuring can be made of (an error).
/// Threading: [control]. Needs equations that are not singular.
void checkResponses (const Netlist& netlist, const NodalEquations& equations, FindingList& findings);

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/FindingList.h"
#include "Circuit/NodalEquations.h"

namespace stopwright
{

/// Natural frequencies that grow: an error, with the frequency and the op-amps that take part. A warning when the
/// network is at rest with ideal op-amps but grows as soon as they have a bandwidth, however wide: an ideal amplifier
/// does not tell its two inputs apart, a real one does.
/// Threading: [control]. Needs equations that are not singular.
void checkStability (const Netlist& netlist, const NodalEquations& equations, FindingList& findings);

} // namespace stopwright

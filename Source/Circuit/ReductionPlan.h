// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/NetworkEquations.h"

#include <vector>

namespace stopwright
{

/// Which equations of a network give which unknowns, decided once per topology with generic values.
///
/// Where M of NetworkEquations is singular (coils that alone join a tree to the rest, ideal op-amps that force a
/// capacitor's volts) some of its equations are constraints P x + Q u = 0 between states. As many states then follow
/// from the others ("dependent"), and as many unknowns are free to be what keeps the constraint's rate of change at
/// zero (differential index 2). Anything beyond is a fault and is named.
/// Generic values make the rank a matter of topology, not of rounding: all numbers are taken from 0.5 .. 2.
/// Threading: [control]. Source: Hairer, Wanner, "Solving ordinary differential equations II", 1996, VII.1.
struct ReductionPlan
{
    explicit ReductionPlan (const NetworkEquations& equations);

    std::vector<int> pivotRows, constraintRows;          ///< of the equations 0 .. unknownCount - 1
    std::vector<int> pivotColumns, freeColumns;          ///< of the unknowns
    std::vector<int> independentStates, dependentStates; ///< 0 .. stateCount - 1, each ascending
    NetworkFault fault;
    int faultyOutput = -1; ///< with outputFollowsRate
};

} // namespace stopwright

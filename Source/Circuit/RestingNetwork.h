// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/JunctionSolver.h"
#include "Circuit/NodalEquations.h"

#include <string>

namespace stopwright
{

/// The equations of a network at 0 Hz with every tap at zero volts, reduced to its junctions, and their solution.
/// Threading: [control]. Needs names, nodes and values in order.
class RestingNetwork
{
public:
    explicit RestingNetwork (const Netlist& netlist);

    const NodalEquations& equations() const noexcept { return equations_; }

    const JunctionSolver& solver() const noexcept { return solver_; }

    /// A node (in words) or part the equations leave open at 0 Hz; empty when there is none. Then only may settle be called.
    const std::string& undecided() const noexcept { return undecided_; }

    /// Looks for the point where all laws hold; false when it is not found.
    bool settle();

    /// One of the unknowns of equations() there.
    double unknown (int index) const;

private:
    void reduce (const Netlist& netlist);
    bool tryAt (double supplyShare, double shuntSiemens);
    bool settleByShunt();
    bool settleBySupply();

    NodalEquations equations_;
    JunctionSolver solver_;
    std::string undecided_;
    ExtendedMatrix fromSupplies_;  ///< the unknowns while no junction carries an excess current
    ExtendedMatrix fromJunctions_; ///< and what one ampere of each adds
    JunctionPorts ports_;
    std::vector<double> open_, scaled_;
};

} // namespace stopwright

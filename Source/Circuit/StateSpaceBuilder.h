// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/KnobTable.h"
#include "Circuit/LinearForm.h"
#include "Circuit/Netlist.h"
#include "Circuit/NetworkBranches.h"
#include "Circuit/NetworkFault.h"
#include "Circuit/PaddedTable.h"
#include "Circuit/StateSpace.h"

#include <span>
#include <string>
#include <vector>

namespace stopwright
{

class NetworkEquations;
struct ReductionPlan;

/// Turns a netlist into a state space: the topology once on [control], the values as often as a knob moves on [audio].
///
/// Needs a netlist whose names, node counts and values are in order. Never throws for a network that cannot be solved:
/// fault() says why, and then nothing else may be called. An output node that the netlist lacks reads 0.
/// Sources are the taps, the supplies' volts, then amps: one per junction, flowing through it, and one per injected
/// node, flowing into it. Behind the output nodes come as many outputs: the volts across the junctions, and what an
/// injected node lies below common.
/// States are in this order, each kind in the netlist's order, those that depend on others left out: op-amp outputs,
/// capacitors ("C1", and "L1.self" for a coil's own), coils.
class StateSpaceBuilder
{
public:
    /// A capacitor, coil or op-amp output: its volts or amps = sum_k weight_k [x; x_dependent; u]_k.
    struct Quantity
    {
        std::string name;
        int knob = -1; ///< farads or henries; -1 for op-amps
        LinearForm form;
    };

    /// Threading: [control].
    StateSpaceBuilder (const Netlist& netlist,
                       const std::vector<std::string>& outputNodes,
                       const std::vector<std::string>& injectedNodes = {});

    const NetworkFault& fault() const noexcept { return fault_; }

    const KnobTable& knobs() const noexcept { return knobs_; }

    int stateCount() const noexcept { return stateCount_; }

    int sourceCount() const noexcept { return sourceCount_; }

    int outputCount() const noexcept { return outputCount_; }

    /// The first stateCount() are the states in order, then the dependent ones, then capacitors that close a loop.
    const std::vector<Quantity>& quantities() const noexcept { return quantities_; }

    /// A state space of the right sizes, all zero. Threading: [control].
    StateSpace makeStateSpace() const { return { stateCount_, sourceCount_, outputCount_, dependentCount_ }; }

    /// Solves the network for these knob values (knobs().size() of them, in range) and writes the result.
    /// Returns false, with `result` as it was or partly written, when the values drown in rounding.
    /// Threading: [audio] no allocation, no lock.
    bool build (std::span<const double> knobValues, StateSpace& result) noexcept;

private:
    /// One entry of a table: number k of data() grows by weight times the value of an element.
    struct Stamp
    {
        int position = 0;
        double weight = 0.0;
    };

    struct Element
    {
        BranchValue value;
        int firstStamp = 0;
        int stampEnd = 0;
        bool isRate = false;
    };

    void plan (const NetworkEquations& equations, const ReductionPlan& reduction);
    void placeStamps (const NetworkEquations& equations,
                      const std::vector<int>& rowPositions,
                      const std::vector<int>& columnPositions);
    void nameQuantities (const NetworkEquations& equations, const std::vector<int>& columnOrder);
    void fill (std::span<const double> knobValues) noexcept;
    bool reduce() noexcept;
    void assembleRates() noexcept;
    void assembleRow (int state) noexcept;
    bool write (StateSpace& result) const noexcept;

    KnobTable knobs_;
    NetworkFault fault_;
    int pivotCount_ = 0, dependentCount_ = 0, stateCount_ = 0, sourceCount_ = 0, outputCount_ = 0;
    std::vector<Element> elements_;
    std::vector<Stamp> stamps_;
    std::vector<Quantity> quantities_;
    std::vector<double> constants_; ///< the static table with the constant stamps only
    std::vector<double> rateConstants_;
    PaddedTable fixed_, rate_, solve_;
    std::vector<double> scales_;
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/LinearForm.h"
#include "Circuit/NetworkBranches.h"
#include "Circuit/NetworkFault.h"
#include "Circuit/VoltageForest.h"

#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// The equations of a network in its physical states, as a pattern that is filled with values again and again.
///
/// Columns z: unknowns w (one voltage per tree of the forest that does not hold common, then one current per ideal
/// op-amp), states x (op-amp outputs, tree capacitors' volts, coils' amps), sources u. Rows bear the same numbers:
///   0 = M w + N x + U u            Kirchhoff's current law per tree; e+ - e- - e_out / A0 = 0 per ideal op-amp
///   E x' + S u' = F w + G x + H u  one row per state
///   y = C w + D x + J u            one row per output
/// u are the sources' volts and then the ports' amps; behind the outputs come the volts across the ports.
/// Node voltages are e = T w + T_v [x; u] (see VoltageForest), so currents sum with the transposed map and a capacitor
/// that closes a loop only adds to E and S. [M N U; F G H; C D J] is the static table, [E S] the rate table.
/// Threading: construct on [control]; needs names, node counts and values in order. fault() tells if it failed.
class NetworkEquations
{
public:
    /// A capacitor, coil or op-amp output whose volts or amps are physical, and how they follow from x and u.
    struct Quantity
    {
        std::string name;
        BranchValue value; ///< farads or henries; no knob for op-amps, which store no energy here
        LinearForm form;   ///< over columns
    };

    NetworkEquations (const NetworkBranches& branches, const std::vector<std::string>& outputNodes);

    const NetworkFault& fault() const noexcept { return fault_; }

    int unknownCount() const noexcept { return treeCount_ + idealCount_; }

    int stateCount() const noexcept { return stateCount_; }

    int sourceCount() const noexcept { return sourceCount_ + portCount_; }

    int outputCount() const noexcept { return outputCount_ + portCount_; }

    int firstSourceColumn() const noexcept { return unknownCount() + stateCount_; }

    int rowCount() const noexcept { return firstSourceColumn() + outputCount(); }

    int columnCount() const noexcept { return firstSourceColumn() + sourceCount(); }

    /// Whether unknown (or equation) `index` is that of an op-amp; then its name, else the nodes of its tree.
    bool isAmplifier (int index) const noexcept { return index >= treeCount_; }

    const std::vector<std::string>& ownersOf (int index) const { return owners_[static_cast<std::size_t> (index)]; }

    /// All physical quantities: the first stateCount() are the states in column order, then loop-closing capacitors.
    const std::vector<Quantity>& quantities() const noexcept { return quantities_; }

    /// One entry of a table that grows by weight times element `element`'s value; element -1 is the constant 1.
    struct Stamp
    {
        int element = -1;
        int row = 0;
        int column = 0;
        double weight = 0.0;
        bool isRate = false; ///< in the rate table, whose rows and columns count from the first state
    };

    const std::vector<BranchValue>& elements() const noexcept { return elements_; }

    const std::vector<Stamp>& stamps() const noexcept { return stamps_; }

private:
    void growForest (const NetworkBranches& branches, VoltageForest& forest);
    void joinFixed (const NetworkBranches& branches, VoltageForest& forest);
    void checkIdealOutputs (const NetworkBranches& branches, const VoltageForest& forest);
    std::vector<std::string> fixedBy (const NetworkBranches& branches, const LinearForm& potential) const;
    void numberColumns (const NetworkBranches& branches, const VoltageForest& forest);
    LinearForm columnsOf (const LinearForm& potential) const;

    void addConductances (const NetworkBranches& branches);
    void addCapacitors (const NetworkBranches& branches);
    void addInductors (const NetworkBranches& branches);
    void addAmplifiers (const NetworkBranches& branches);
    void addPorts (const NetworkBranches& branches);
    void addOutputs (const NetworkBranches& branches, const std::vector<std::string>& outputNodes);

    int addElement (const BranchValue& value);
    void addRow (int row, const LinearForm& form, double weight, int element);
    void addCurrent (const LinearForm& through, int column, double weight, int element);
    LinearForm across (int a, int b) const;
    bool isTreeCapacitor (int column) const noexcept;

    NetworkFault fault_;
    int treeCount_ = 0, idealCount_ = 0, stateCount_ = 0, sourceCount_ = 0, outputCount_ = 0, portCount_ = 0;
    int firstCapacitorColumn_ = 0, firstInductorColumn_ = 0;
    std::vector<int> treeCapacitors_, linkCapacitors_; ///< indices into the branches' capacitors
    std::vector<int> columnOfBranch_;                  ///< forest branch -> column
    std::vector<LinearForm> nodes_;                    ///< each node's voltage over columns
    std::vector<std::vector<std::string>> owners_;
    std::vector<Quantity> quantities_;
    std::vector<BranchValue> elements_;
    std::vector<Stamp> stamps_;
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Junction.h"
#include "Circuit/Netlist.h"
#include "Circuit/NodeMap.h"

#include <Eigen/Dense>
#include <complex>
#include <string>
#include <vector>

namespace stopwright
{

/// Nodal sums such as 1 mS + 1 nS lose the small one's digits in double; the equations are kept with more of them.
using Extended = long double;
using ExtendedMatrix = Eigen::Matrix<Extended, Eigen::Dynamic, Eigen::Dynamic>;
using ExtendedComplex = std::complex<Extended>;
using ExtendedComplexMatrix = Eigen::Matrix<ExtendedComplex, Eigen::Dynamic, Eigen::Dynamic>;

/// The modified nodal equations of a netlist, linear in s: (G + s E) z = F u.
///
/// z holds the voltages of the nodes (0 .. nodeCount() - 1, see NodeMap) and then one current for every inductor, op-amp
/// output, and resistor or source below one ohm. The rows are Kirchhoff's current law at those nodes and then the
/// equation of each such branch:
///   inductor            v_b - v_a + (r + s L) i = 0
///   small resistor      v_b - v_a + R i = 0
///   source              v - R i = u, for an ideal one (R = 0) or one below one ohm
///   op-amp              (1/A0 + s/(2 pi GBW)) v_out - v_plus + v_minus = 0, terms left out where ideal
///   supply              v_plus - v_minus - R i = V
/// A junction is a conductance between its leads, and for a transistor another controlled by its partner's volts: the
/// slopes given to the constructor, those at an operating point for small signals. Supplies are at zero volts in F;
/// supplyExcitation() is what they lay down at rest. A diode with a series resistance has one more unknown, its inner
/// node's voltage. A source above one ohm is a conductance and a current u/R at its node. A part with all leads on one solver node
/// carries nothing and is left out.
/// E is a sum of one term per energy store: E = sum_k value_k (e_row+ - e_row-) (e_col+ - e_col-)^T, every value > 0.
/// Threading: [control]. Needs names, node counts and values to be in order (see NetlistCheck).
/// Source: Ho, Ruehli, Brennan, "The modified nodal approach to network analysis", 1975.
class NodalEquations
{
public:
    /// One term of E; -1 (common) stands for no entry.
    struct Store
    {
        int rowPlus = NodeMap::common;
        int rowMinus = NodeMap::common;
        int columnPlus = NodeMap::common;
        int columnMinus = NodeMap::common;
        Extended value = 0.0L;
    };

    /// The ends of a junction among the unknowns, common being NodeMap::common.
    struct JunctionEnds
    {
        int from = NodeMap::common;
        int to = NodeMap::common;
    };

    /// `slopes` has one entry per junction in the order of junctionsOf; without them each is junctionSiemens.
    explicit NodalEquations (const Netlist& netlist, const std::vector<JunctionSlope>& slopes = {});

    int size() const noexcept { return static_cast<int> (conductances_.rows()); }

    int nodeCount() const noexcept { return nodes_.count(); }

    const NodeMap& nodes() const noexcept { return nodes_; }

    /// G, E term by term, and F (one column per source).
    const ExtendedMatrix& conductances() const noexcept { return conductances_; }

    const std::vector<Store>& stores() const noexcept { return stores_; }

    const ExtendedMatrix& excitation() const noexcept { return excitation_; }

    const std::vector<JunctionSlope>& slopes() const noexcept { return slopes_; }

    const std::vector<JunctionEnds>& junctions() const noexcept { return junctions_; }

    /// One column: the supplies' volts.
    const ExtendedMatrix& supplyExcitation() const noexcept { return supplyExcitation_; }

    /// Number of a part's branch current or inner node among the unknowns, or -1 when it has none.
    int findBranch (std::string_view owner) const;

    /// Name of the part or source whose branch current is unknown `index` (nodeCount() .. size() - 1).
    const std::string& branchOwner (int index) const;

    /// G + s E.
    ExtendedComplexMatrix at (ExtendedComplex s) const;

private:
    void addConductance (int a, int b, Extended siemens);
    void addResistor (const Part& part, int a, int b, double ohms);
    void addCapacitor (int a, int b, double farads, double leakOhms);
    void addInductor (const Part& part, int a, int b, const Inductor& inductor);
    void addOpAmp (const Part& part, const OpAmp& amplifier);
    void addPart (const Part& part);
    void addJunctions (const Part& part);
    void addSupply (const Part& part, const Supply& supply);
    void stampJunctions();
    void addSource (const SourcePort& source, int index);
    int addBranch (const std::string& owner);

    /// A current from a to b with `ohms` in its way; returns its number among the unknowns.
    int addSeriesBranch (const Part& part, int a, int b, double ohms);
    void put (int row, int column, Extended value);

    struct Entry
    {
        int row;
        int column;
        Extended value;
    };

    NodeMap nodes_;
    std::vector<Entry> conductanceEntries_;
    std::vector<Entry> excitationEntries_;
    ExtendedMatrix conductances_;
    ExtendedMatrix excitation_;
    ExtendedMatrix supplyExcitation_;
    std::vector<Entry> supplyEntries_;
    std::vector<JunctionEnds> junctions_;
    std::vector<int> partners_; ///< the other junction of the same transistor, or -1
    std::vector<JunctionSlope> slopes_;
    std::vector<Store> stores_;
    std::vector<std::string> branchOwners_;
};

} // namespace stopwright

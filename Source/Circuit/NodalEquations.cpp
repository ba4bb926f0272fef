// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NodalEquations.h"

#include "Circuit/PotentiometerTrack.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

/// Below this a resistor gets a current of its own: a potentiometer's milliohm end next to megohms would otherwise
/// leave too few digits in the sum of conductances at their node.
constexpr double leastConductanceOhms = 1.0;

} // namespace

NodalEquations::NodalEquations (const Netlist& netlist, const std::vector<JunctionSlope>& slopes)
    : nodes_ (netlist),
      slopes_ (slopes)
{
    for (std::size_t index = 0; index < netlist.sources.size(); ++index)
        addSource (netlist.sources[index], static_cast<int> (index));
    for (const auto& part : netlist.parts)
        addPart (part);
    stampJunctions();

    const auto size = nodes_.count() + static_cast<Eigen::Index> (branchOwners_.size());
    conductances_ = ExtendedMatrix::Zero (size, size);
    excitation_ = ExtendedMatrix::Zero (size, static_cast<Eigen::Index> (netlist.sources.size()));
    for (const auto& entry : conductanceEntries_)
        conductances_ (entry.row, entry.column) += entry.value;
    for (const auto& entry : excitationEntries_)
        excitation_ (entry.row, entry.column) += entry.value;
    supplyExcitation_ = ExtendedMatrix::Zero (size, 1);
    for (const auto& entry : supplyEntries_)
        supplyExcitation_ (entry.row, 0) += entry.value;
}

int NodalEquations::findBranch (std::string_view owner) const
{
    const auto place = std::find (branchOwners_.begin(), branchOwners_.end(), owner);
    return place == branchOwners_.end() ? -1 : nodeCount() + static_cast<int> (place - branchOwners_.begin());
}

const std::string& NodalEquations::branchOwner (int index) const
{
    return branchOwners_[static_cast<std::size_t> (index - nodeCount())];
}

ExtendedComplexMatrix NodalEquations::at (ExtendedComplex s) const
{
    ExtendedComplexMatrix matrix = conductances_.cast<ExtendedComplex>();
    const auto add = [&matrix] (int row, int column, ExtendedComplex value)
    {
        if (row >= 0 && column >= 0)
            matrix (row, column) += value;
    };
    for (const auto& store : stores_)
    {
        const ExtendedComplex value = s * store.value;
        add (store.rowPlus, store.columnPlus, value);
        add (store.rowPlus, store.columnMinus, -value);
        add (store.rowMinus, store.columnPlus, -value);
        add (store.rowMinus, store.columnMinus, value);
    }
    return matrix;
}

void NodalEquations::put (int row, int column, Extended value)
{
    if (row >= 0 && column >= 0)
        conductanceEntries_.push_back ({ row, column, value });
}

int NodalEquations::addBranch (const std::string& owner)
{
    branchOwners_.push_back (owner);
    return nodes_.count() + static_cast<int> (branchOwners_.size()) - 1;
}

void NodalEquations::addConductance (int a, int b, Extended siemens)
{
    put (a, a, siemens);
    put (b, b, siemens);
    put (a, b, -siemens);
    put (b, a, -siemens);
}

void NodalEquations::addResistor (const Part& part, int a, int b, double ohms)
{
    if (a == b)
        return;
    if (ohms >= leastConductanceOhms)
    {
        addConductance (a, b, 1.0L / static_cast<Extended> (ohms));
        return;
    }
    addSeriesBranch (part, a, b, ohms);
}

int NodalEquations::addSeriesBranch (const Part& part, int a, int b, double ohms)
{
    const int branch = addBranch (part.name);
    put (a, branch, 1.0L);
    put (b, branch, -1.0L);
    put (branch, a, -1.0L);
    put (branch, b, 1.0L);
    put (branch, branch, static_cast<Extended> (ohms));
    return branch;
}

void NodalEquations::addCapacitor (int a, int b, double farads, double leakOhms)
{
    if (a == b)
        return;
    stores_.push_back ({ a, b, a, b, static_cast<Extended> (farads) });
    if (std::isfinite (leakOhms))
        addConductance (a, b, 1.0L / static_cast<Extended> (leakOhms));
}

void NodalEquations::addInductor (const Part& part, int a, int b, const Inductor& inductor)
{
    if (a == b)
        return;
    const int branch = addSeriesBranch (part, a, b, inductor.windingOhms);
    stores_.push_back ({ branch, NodeMap::common, branch, NodeMap::common, static_cast<Extended> (inductor.henries) });
    if (inductor.selfFarads > 0.0)
        stores_.push_back ({ a, b, a, b, static_cast<Extended> (inductor.selfFarads) });
}

void NodalEquations::addOpAmp (const Part& part, const OpAmp& amplifier)
{
    const int plus = nodes_.find (part.nodes[0]);
    const int minus = nodes_.find (part.nodes[1]);
    const int out = nodes_.find (part.nodes[2]);
    const int branch = addBranch (part.name);
    put (out, branch, 1.0L);
    put (branch, plus, -1.0L);
    put (branch, minus, 1.0L);
    if (amplifier.openLoopDb)
        put (branch, out, std::pow (10.0L, -static_cast<Extended> (*amplifier.openLoopDb) / 20.0L));
    if (amplifier.gainBandwidthHz)
    {
        const Extended crossover =
            2.0L * std::numbers::pi_v<Extended> * static_cast<Extended> (*amplifier.gainBandwidthHz);
        stores_.push_back ({ branch, NodeMap::common, out, NodeMap::common, 1.0L / crossover });
    }
}

void NodalEquations::addPart (const Part& part)
{
    const auto node = [&] (std::size_t lead) { return nodes_.find (part.nodes[lead]); };
    if (const auto* resistor = std::get_if<Resistor> (&part.value))
        addResistor (part, node (0), node (1), resistor->ohms);
    else if (const auto* capacitor = std::get_if<Capacitor> (&part.value))
        addCapacitor (node (0), node (1), capacitor->farads, capacitor->leakOhms);
    else if (const auto* inductor = std::get_if<Inductor> (&part.value))
        addInductor (part, node (0), node (1), *inductor);
    else if (const auto* amplifier = std::get_if<OpAmp> (&part.value))
        addOpAmp (part, *amplifier);
    else if (const auto* supply = std::get_if<Supply> (&part.value))
        addSupply (part, *supply);
    else if (! junctionsOf (part.value).empty())
        addJunctions (part);
    else if (const auto* potentiometer = std::get_if<Potentiometer> (&part.value))
    {
        const auto track = potentiometerOhms (*potentiometer);
        addResistor (part, node (0), node (1), track.upperOhms);
        addResistor (part, node (1), node (2), track.lowerOhms);
    }
}

void NodalEquations::addSupply (const Part& part, const Supply& supply)
{
    const int plus = nodes_.find (part.nodes[0]);
    const int minus = nodes_.find (part.nodes[1]);
    if (plus == minus)
        return;
    const int branch = addBranch (part.name);
    put (plus, branch, 1.0L);
    put (minus, branch, -1.0L);
    put (branch, plus, 1.0L);
    put (branch, minus, -1.0L);
    put (branch, branch, -static_cast<Extended> (supply.seriesOhms));
    supplyEntries_.push_back ({ branch, 0, static_cast<Extended> (supply.volts) });
}

void NodalEquations::addJunctions (const Part& part)
{
    const auto ends = junctionsOf (part.value);
    const int first = static_cast<int> (junctions_.size());
    for (std::size_t index = 0; index < ends.size(); ++index)
    {
        junctions_.push_back ({ nodes_.find (part.nodes[ends[index].from]), nodes_.find (part.nodes[ends[index].to]) });
        partners_.push_back (ends.size() == 1 ? -1 : first + (index == 0 ? 1 : 0));
    }

    const auto* diode = std::get_if<Diode> (&part.value);
    if (diode == nullptr || diode->seriesOhms <= 0.0)
        return;
    auto& junction = junctions_.back();
    const int outer = junction.from;
    junction.from = addBranch (part.name);
    if (diode->seriesOhms >= leastConductanceOhms)
        addConductance (outer, junction.from, 1.0L / static_cast<Extended> (diode->seriesOhms));
    else
        addSeriesBranch (part, outer, junction.from, diode->seriesOhms);
}

void NodalEquations::stampJunctions()
{
    slopes_.resize (junctions_.size());
    for (std::size_t index = 0; index < junctions_.size(); ++index)
    {
        const auto [from, to] = junctions_[index];
        const auto& slope = slopes_[index];
        addConductance (from, to, static_cast<Extended> (slope.own));
        if (partners_[index] < 0 || slope.cross == 0.0)
            continue;
        const auto& partner = junctions_[static_cast<std::size_t> (partners_[index])];
        const auto cross = static_cast<Extended> (slope.cross);
        put (from, partner.from, cross);
        put (from, partner.to, -cross);
        put (to, partner.from, -cross);
        put (to, partner.to, cross);
    }
}

void NodalEquations::addSource (const SourcePort& source, int index)
{
    const int node = nodes_.find (source.node);
    if (node == NodeMap::common)
        return;
    const auto ohms = static_cast<Extended> (source.sourceOhms);
    if (source.sourceOhms >= leastConductanceOhms)
    {
        put (node, node, 1.0L / ohms);
        excitationEntries_.push_back ({ node, index, 1.0L / ohms });
        return;
    }
    const int branch = addBranch (source.name);
    put (node, branch, 1.0L);
    put (branch, node, 1.0L);
    put (branch, branch, -ohms);
    excitationEntries_.push_back ({ branch, index, 1.0L });
}

} // namespace stopwright

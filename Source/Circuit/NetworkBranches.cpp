// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NetworkBranches.h"

#include "Circuit/Junction.h"
#include "Circuit/PotentiometerTrack.h"

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

BranchValue fromKnob (BranchLaw law, int knob)
{
    return { law, knob, -1, Taper::linear };
}

void addBetween (std::vector<NetworkBranches::Branch>& list, NetworkBranches::Branch branch)
{
    if (branch.a != branch.b)
        list.push_back (std::move (branch));
}

} // namespace

double valueOf (const BranchValue& branch, std::span<const double> knobValues) noexcept
{
    if (branch.law == BranchLaw::junction)
        return junctionSiemens;
    const double knob = knobValues[static_cast<std::size_t> (branch.knob)];
    switch (branch.law)
    {
        case BranchLaw::plain:
            return knob;
        case BranchLaw::conductance:
            return 1.0 / knob;
        case BranchLaw::angular:
            return 2.0 * std::numbers::pi * knob;
        case BranchLaw::upperConductance:
        case BranchLaw::lowerConductance:
        case BranchLaw::junction:
            break;
    }
    const auto track =
        potentiometerOhms ({ knob, knobValues[static_cast<std::size_t> (branch.positionKnob)], branch.taper });
    return 1.0 / (branch.law == BranchLaw::upperConductance ? track.upperOhms : track.lowerOhms);
}

NetworkBranches::NetworkBranches (const Netlist& netlist, const KnobTable& knobs) : nodeCount (1), map_ (netlist)
{
    nodeCount += map_.count();
    nodeNames.emplace_back (commonNode);
    for (int node = 0; node < map_.count(); ++node)
        nodeNames.push_back (map_.nameOf (node));

    for (const auto& port : netlist.sources)
        addSource (port, knobs);
    for (const auto& part : netlist.parts)
        addPart (part, knobs);
}

int NetworkBranches::findNode (std::string_view name) const
{
    const int number = map_.find (name);
    return number == NodeMap::unknown ? -1 : number + 1;
}

void NetworkBranches::addSource (const SourcePort& port, const KnobTable& knobs)
{
    const int node = findNode (port.node);
    if (port.sourceOhms <= 0.0)
    {
        sources.push_back ({ port.name, node });
        return;
    }
    const int own = nodeCount++;
    nodeNames.push_back (port.name);
    sources.push_back ({ port.name, own });
    const auto value = fromKnob (BranchLaw::conductance, knobs.indexOf (port.name, KnobKind::sourceOhms));
    addBetween (conductances, { port.name, own, node, value, {} });
}

void NetworkBranches::addPart (const Part& part, const KnobTable& knobs)
{
    if (std::holds_alternative<Switch> (part.value))
        return;
    if (const auto* potentiometer = std::get_if<Potentiometer> (&part.value))
        return addPotentiometer (part, *potentiometer, knobs);
    if (const auto* opAmp = std::get_if<OpAmp> (&part.value))
        return addAmplifier (part, *opAmp, knobs);
    if (const auto* inductor = std::get_if<Inductor> (&part.value))
        return addInductor (part, *inductor, knobs);
    if (const auto* supply = std::get_if<Supply> (&part.value))
        return addSupply (part, *supply, knobs);
    if (! junctionsOf (part.value).empty())
        return addJunctions (part, knobs);

    const int a = nodeOf (part, 0);
    const int b = nodeOf (part, 1);
    const int knob = knobs.indexOf (part.name, KnobKind::value);
    if (const auto* capacitor = std::get_if<Capacitor> (&part.value))
    {
        addBetween (capacitors, { part.name, a, b, fromKnob (BranchLaw::plain, knob), {} });
        if (std::isfinite (capacitor->leakOhms))
            addBetween (conductances,
                        { part.name,
                          a,
                          b,
                          fromKnob (BranchLaw::conductance, knobs.indexOf (part.name, KnobKind::leakOhms)),
                          {} });
        return;
    }
    addBetween (conductances, { part.name, a, b, fromKnob (BranchLaw::conductance, knob), {} });
}

void NetworkBranches::addPotentiometer (const Part& part, const Potentiometer& potentiometer, const KnobTable& knobs)
{
    const int track = knobs.indexOf (part.name, KnobKind::value);
    const int position = knobs.indexOf (part.name, KnobKind::position);
    const int wiper = nodeOf (part, 1);
    const BranchValue upper { BranchLaw::upperConductance, track, position, potentiometer.taper };
    const BranchValue lower { BranchLaw::lowerConductance, track, position, potentiometer.taper };
    addBetween (conductances, { part.name, nodeOf (part, 0), wiper, upper, {} });
    addBetween (conductances, { part.name, wiper, nodeOf (part, 2), lower, {} });
}

void NetworkBranches::addInductor (const Part& part, const Inductor& inductor, const KnobTable& knobs)
{
    const int a = nodeOf (part, 0);
    const int b = nodeOf (part, 1);
    const auto henries = fromKnob (BranchLaw::plain, knobs.indexOf (part.name, KnobKind::value));
    const auto winding = fromKnob (BranchLaw::plain, knobs.indexOf (part.name, KnobKind::windingOhms));
    addBetween (inductors, { part.name, a, b, henries, winding });
    if (inductor.selfFarads > 0.0)
    {
        const auto farads = fromKnob (BranchLaw::plain, knobs.indexOf (part.name, KnobKind::selfFarads));
        addBetween (capacitors, { part.name + ".self", a, b, farads, {} });
    }
}

void NetworkBranches::addSupply (const Part& part, const Supply& supply, const KnobTable& knobs)
{
    const int plus = nodeOf (part, 0);
    const int minus = nodeOf (part, 1);
    if (supply.seriesOhms <= 0.0)
    {
        sources.push_back ({ part.name, plus, minus });
        return;
    }
    const int own = nodeCount++;
    nodeNames.push_back (part.name);
    sources.push_back ({ part.name, own, minus });
    const auto value = fromKnob (BranchLaw::conductance, knobs.indexOf (part.name, KnobKind::seriesOhms));
    addBetween (conductances, { part.name, own, plus, value, {} });
}

void NetworkBranches::addJunctions (const Part& part, const KnobTable& knobs)
{
    for (const auto& junction : junctionsOf (part.value))
    {
        int from = nodeOf (part, junction.from);
        const int to = nodeOf (part, junction.to);
        if (const auto* diode = std::get_if<Diode> (&part.value); diode != nullptr && diode->seriesOhms > 0.0)
        {
            const int outer = from;
            from = nodeCount++;
            nodeNames.push_back (part.name);
            const auto value = fromKnob (BranchLaw::conductance, knobs.indexOf (part.name, KnobKind::seriesOhms));
            addBetween (conductances, { part.name, outer, from, value, {} });
        }
        ports.push_back ({ part.name + std::string (junction.suffix), from, to });
        addBetween (conductances, { ports.back().name, from, to, fromKnob (BranchLaw::junction, -1), {} });
    }
}

void NetworkBranches::addInjection (std::string_view nodeName)
{
    ports.push_back ({ std::string (nodeName), 0, findNode (nodeName) });
}

void NetworkBranches::addAmplifier (const Part& part, const OpAmp& opAmp, const KnobTable& knobs)
{
    Amplifier amplifier { part.name, nodeOf (part, 0), nodeOf (part, 1), nodeOf (part, 2), false, {}, 0.0 };
    amplifier.hasBandwidth = opAmp.gainBandwidthHz.has_value();
    if (amplifier.hasBandwidth)
        amplifier.bandwidth = fromKnob (BranchLaw::angular, knobs.indexOf (part.name, KnobKind::gainBandwidthHz));
    if (opAmp.openLoopDb)
        amplifier.inverseGain = std::pow (10.0, -*opAmp.openLoopDb / 20.0);
    amplifiers.push_back (amplifier);
}

} // namespace stopwright

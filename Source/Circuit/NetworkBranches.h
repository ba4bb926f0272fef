// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/KnobTable.h"
#include "Circuit/Netlist.h"
#include "Circuit/NodeMap.h"

#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// What number a branch makes of its knobs.
enum class BranchLaw
{
    conductance,      ///< 1 / knob
    upperConductance, ///< potentiometer, top to wiper
    lowerConductance, ///< potentiometer, wiper to bottom
    junction,         ///< junctionSiemens; no knob
    plain,            ///< knob: farads, henries, ohms in series with a coil
    angular           ///< 2 pi knob: an op-amp's gain-bandwidth in rad/s
};

/// One number and the knobs it comes from (indices into the KnobTable).
struct BranchValue
{
    BranchLaw law = BranchLaw::plain;
    int knob = -1;
    int positionKnob = -1; ///< potentiometers
    Taper taper = Taper::linear;
};

/// That number: ohms, siemens, farads, henries or rad/s. Threading: [audio] no allocation, no lock.
double valueOf (const BranchValue& branch, std::span<const double> knobValues) noexcept;

/// A netlist taken apart into two-terminal branches between numbered nodes, node 0 being common.
///
/// Closed switches have merged their nodes and open ones are gone; branches with both ends on one node are left out. A
/// source with resistance is an ideal one on a node of its own, with the resistance as a branch; so is a supply. A
/// junction is a port with junctionSiemens in parallel, whatever it carries beyond being fed in there.
/// Threading: [control]. Needs names, node counts and values in order.
class NetworkBranches
{
public:
    struct Branch
    {
        std::string name;
        int a = 0;
        int b = 0;
        BranchValue value;
        BranchValue winding; ///< inductors
    };

    struct Amplifier
    {
        std::string name;
        int plus = 0;
        int minus = 0;
        int out = 0;
        bool hasBandwidth = false;
        BranchValue bandwidth;
        double inverseGain = 0.0; ///< 1 / A0
    };

    struct Source
    {
        std::string name;
        int node = 0;
        int other = 0; ///< a supply's minus
    };

    /// Where a current is fed in: `conductances` has what lies in parallel, if anything does.
    struct Port
    {
        std::string name;
        int from = 0; ///< the current flows from here through the port ...
        int to = 0;   ///< ... to here
    };

    NetworkBranches (const Netlist& netlist, const KnobTable& knobs);

    /// Number of the node with this name, or -1 when the netlist does not have it.
    int findNode (std::string_view name) const;

    /// One more port, behind those of the junctions, that feeds a current from common into this node.
    void addInjection (std::string_view nodeName);

    int nodeCount = 1;                  ///< common and the sources' own nodes included
    std::vector<std::string> nodeNames; ///< by number; a source's own node bears the source's name
    std::vector<Branch> conductances, capacitors, inductors;
    std::vector<Amplifier> amplifiers;
    std::vector<Source> sources; ///< taps, then supplies
    std::vector<Port> ports;     ///< junctions in the order of junctionsOf, then injections

private:
    void addPart (const Part& part, const KnobTable& knobs);
    void addSource (const SourcePort& port, const KnobTable& knobs);
    void addPotentiometer (const Part& part, const Potentiometer& potentiometer, const KnobTable& knobs);
    void addInductor (const Part& part, const Inductor& inductor, const KnobTable& knobs);
    void addSupply (const Part& part, const Supply& supply, const KnobTable& knobs);
    void addJunctions (const Part& part, const KnobTable& knobs);
    void addAmplifier (const Part& part, const OpAmp& opAmp, const KnobTable& knobs);

    int nodeOf (const Part& part, std::size_t lead) const { return findNode (part.nodes[lead]); }

    NodeMap map_;
};

} // namespace stopwright

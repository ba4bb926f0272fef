// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/VoltageConflictCheck.h"

#include "Circuit/FindingWords.h"

#include <map>

namespace stopwright
{

namespace
{

/// Something without resistance that lays down the voltage of a node.
struct Driver
{
    std::string name;
    std::string words; ///< "Tap W1" or "The output of U1"
    std::string node;
    bool isTap = false;
};

std::vector<Driver> collectDrivers (const Netlist& netlist)
{
    std::vector<Driver> drivers;
    for (const auto& source : netlist.sources)
        if (source.sourceOhms == 0.0)
            drivers.push_back ({ source.name, "Tap " + partWords (source.name), source.node, true });
    for (const auto& part : netlist.parts)
        if (std::holds_alternative<OpAmp> (part.value))
            drivers.push_back ({ part.name, "The output of " + partWords (part.name), part.nodes[2], false });
    return drivers;
}

/// " through closed S1 and S2" for the switches that make one node of several names, else nothing.
std::string throughSwitches (const Netlist& netlist, const NodeMap& nodes, int node)
{
    std::vector<std::string> names;
    for (const auto& part : netlist.parts)
    {
        const auto* contact = std::get_if<Switch> (&part.value);
        if (contact != nullptr && contact->closed && part.nodes[0] != part.nodes[1]
            && nodes.find (part.nodes[0]) == node)
            names.push_back (part.name);
    }
    return names.empty() ? std::string() : " through closed " + partsWords (names);
}

void checkShortedDriver (const Netlist& netlist, const NodeMap& nodes, const Driver& driver, FindingList& findings)
{
    if (driver.node == commonNode)
        findings.addError (driver.name, driver.words + " is tied to circuit common, which shorts it; "
                                            + (driver.isTap ? "feed another node." : "take it to a node of its own."));
    else
        findings.addError (driver.name, driver.words + " is shorted to common"
                                            + throughSwitches (netlist, nodes, NodeMap::common)
                                            + (driver.isTap ? "; open the switch or give the tap a source resistance."
                                                            : "; open the switch or put a resistor between them."));
}

void checkRivals (const Netlist& netlist,
                  const NodeMap& nodes,
                  const Driver& first,
                  const Driver& second,
                  FindingList& findings)
{
    const auto place = first.node == second.node
                           ? nodeWords (first.node)
                           : "one node (" + nodesWords ({ first.node, second.node })
                                 + throughSwitches (netlist, nodes, nodes.find (first.node)) + ")";
    const auto remedy = first.isTap || second.isTap ? "give the tap a source resistance or put a resistor between them."
                                                    : "put a resistor between them.";
    const auto rival = second.isTap ? "tap " + partWords (second.name) : "the output of " + partWords (second.name);
    findings.addError (second.name,
                       first.words + " and " + rival + " both lay down the voltage of " + place + "; " + remedy);
}

void checkTapsAtCommon (const Netlist& netlist, const NodeMap& nodes, FindingList& findings)
{
    for (const auto& source : netlist.sources)
        if (source.sourceOhms != 0.0 && nodes.find (source.node) == NodeMap::common)
            findings.addWarning (
                source.name,
                "Tap " + partWords (source.name) + " feeds circuit common"
                    + (source.node == commonNode ? std::string() : throughSwitches (netlist, nodes, NodeMap::common))
                    + ", so it is not heard.");
}

void checkOpAmpInputs (const Netlist& netlist, const NodeMap& nodes, FindingList& findings)
{
    for (const auto& part : netlist.parts)
        if (std::holds_alternative<OpAmp> (part.value) && nodes.find (part.nodes[0]) == nodes.find (part.nodes[1]))
            findings.addError (part.name, "Both inputs of " + partWords (part.name)
                                              + " are on one node, so its output is not determined;"
                                                " separate the inputs.");
}

} // namespace

void checkVoltageConflicts (const Netlist& netlist, const NodeMap& nodes, FindingList& findings)
{
    std::map<int, const Driver*> driverOfNode;
    const auto drivers = collectDrivers (netlist);
    for (const auto& driver : drivers)
    {
        const int node = nodes.find (driver.node);
        if (node == NodeMap::common)
        {
            checkShortedDriver (netlist, nodes, driver, findings);
            continue;
        }
        const auto [place, isFirst] = driverOfNode.try_emplace (node, &driver);
        if (! isFirst)
            checkRivals (netlist, nodes, *place->second, driver, findings);
    }
    checkTapsAtCommon (netlist, nodes, findings);
    checkOpAmpInputs (netlist, nodes, findings);
}

} // namespace stopwright

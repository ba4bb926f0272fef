// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ConnectionCheck.h"

#include "Circuit/FindingWords.h"
#include "Circuit/NodeIslands.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// One lead of a part.
struct Lead
{
    const Part* part = nullptr;
    std::size_t index = 0;

    bool isOpAmpInput() const { return std::holds_alternative<OpAmp> (part->value) && index < 2; }

    bool isOpAmp() const { return std::holds_alternative<OpAmp> (part->value); }

    bool isSwitch() const { return std::holds_alternative<Switch> (part->value); }
};

/// Leads at each solver node; those of closed switches are the node itself and not counted.
using LeadsOfNodes = std::vector<std::vector<Lead>>;

LeadsOfNodes collectLeads (const Netlist& netlist, const NodeMap& nodes)
{
    LeadsOfNodes leads (static_cast<std::size_t> (nodes.count()));
    for (const auto& part : netlist.parts)
    {
        const auto* contact = std::get_if<Switch> (&part.value);
        if (contact != nullptr && contact->closed)
            continue;
        for (std::size_t lead = 0; lead < part.nodes.size(); ++lead)
            if (const int node = nodes.find (part.nodes[lead]); node != NodeMap::common)
                leads[static_cast<std::size_t> (node)].push_back ({ &part, lead });
    }
    return leads;
}

bool touches (const Part& part, const std::string& node)
{
    return std::find (part.nodes.begin(), part.nodes.end(), node) != part.nodes.end();
}

bool hasPartAt (const Netlist& netlist, const std::string& node)
{
    return std::any_of (netlist.parts.begin(), netlist.parts.end(),
                        [&] (const Part& part) { return touches (part, node); });
}

void checkShortedParts (const Netlist& netlist, FindingList& findings)
{
    for (const auto& part : netlist.parts)
    {
        const auto& nodes = part.nodes;
        const bool allOnOne = std::adjacent_find (nodes.begin(), nodes.end(), std::not_equal_to<>()) == nodes.end();
        if (allOnOne && ! std::holds_alternative<OpAmp> (part.value))
            findings.addError (part.name, partWords (part.name) + " has "
                                              + (nodes.size() == 2 ? "both ends" : "all three leads") + " on "
                                              + nodeWords (nodes.front())
                                              + ", so it does nothing; move a lead or remove it.");
    }
}

void checkEndpoints (const Netlist& netlist, FindingList& findings)
{
    const auto& output = netlist.output;
    const auto feeds = [] (const std::string& node)
    { return [&node] (const SourcePort& tap) { return tap.node == node; }; };
    const auto countTaps = [&] (const std::string& node)
    { return std::count_if (netlist.sources.begin(), netlist.sources.end(), feeds (node)); };

    if (output == commonNode)
        findings.addWarning (output, "The output is circuit common, which is always at 0 V; listen at another node.");
    else if (! hasPartAt (netlist, output) && countTaps (output) == 0)
        findings.addError (output, "No part and no tap touches the output " + nodeWords (output)
                                       + "; name a node that the network has, or connect a part to it.");

    for (const auto& source : netlist.sources)
        if (source.node != commonNode && source.node != output && ! hasPartAt (netlist, source.node)
            && countTaps (source.node) == 1)
            findings.addError (
                source.name,
                "Tap " + partWords (source.name) + " feeds " + nodeWords (source.node)
                    + ", which no part touches; name a node that the network has, or connect a part to it.");
}

std::vector<std::string> namesOf (const std::vector<int>& island, const NodeMap& nodes)
{
    std::vector<std::string> names;
    for (const int node : island)
        for (const auto& name : nodes.members (node))
            names.push_back (name);
    return names;
}

/// Names of the parts with a lead on the island that `isWanted`, each once.
template <typename Predicate>
std::vector<std::string> partsAt (const std::vector<int>& island, const LeadsOfNodes& leads, Predicate isWanted)
{
    std::vector<std::string> names;
    for (const int node : island)
        for (const auto& lead : leads[static_cast<std::size_t> (node)])
            if (isWanted (lead) && std::find (names.begin(), names.end(), lead.part->name) == names.end())
                names.push_back (lead.part->name);
    return names;
}

void checkIsland (const std::vector<int>& island,
                  const NodeMap& nodes,
                  const LeadsOfNodes& leads,
                  FindingList& findings)
{
    const auto names = namesOf (island, nodes);
    const auto openSwitches = partsAt (island, leads, [] (const Lead& lead) { return lead.isSwitch(); });
    const auto inputs = partsAt (island, leads, [] (const Lead& lead) { return lead.isOpAmpInput(); });
    const auto others =
        partsAt (island, leads, [] (const Lead& lead) { return ! lead.isSwitch() && ! lead.isOpAmp(); });
    const auto opening = openSwitches.empty() ? std::string()
                                              : " while " + partsWords (openSwitches)
                                                    + (openSwitches.size() == 1 ? " is" : " are") + " open";

    if (others.empty() && ! inputs.empty())
        findings.addError (names.front(),
                           "Only the input of " + partsWords (inputs) + " touches " + nodesWords (names) + opening
                               + ", so nothing sets its voltage; connect it to a part that leads to common.");
    else if (! others.empty())
        findings.addError (names.front(), capitalised (nodesWords (names)) + " (" + partsWords (others) + ") "
                                              + (names.size() == 1 ? "has" : "have") + " no path to common" + opening
                                              + "; connect a part, such as 1 megohm, from there to node \"0\".");
    else
        findings.addError (names.front(), "Nothing but the open contact of " + partsWords (openSwitches) + " touches "
                                              + nodesWords (names) + "; connect a part there or remove the switch.");
}

void checkIslands (const Netlist& netlist, const NodeMap& nodes, const LeadsOfNodes& leads, FindingList& findings)
{
    const int output = nodes.find (netlist.output);
    for (const auto& island : nodeIslands (netlist, nodes, PathKind::any))
    {
        // An output that nothing touches is reported as such.
        const bool isBareOutput = island.size() == 1 && island.front() == output
                                  && leads[static_cast<std::size_t> (output)].empty()
                                  && nodes.members (output).size() == 1;
        if (! isBareOutput)
            checkIsland (island, nodes, leads, findings);
    }
}

void checkLooseLeads (const Netlist& netlist, const NodeMap& nodes, const LeadsOfNodes& leads, FindingList& findings)
{
    std::vector<bool> isUsed (static_cast<std::size_t> (nodes.count()), false);
    const auto use = [&] (const std::string& name)
    {
        if (const int node = nodes.find (name); node != NodeMap::common)
            isUsed[static_cast<std::size_t> (node)] = true;
    };
    use (netlist.output);
    for (const auto& source : netlist.sources)
        use (source.node);

    for (std::size_t node = 0; node < leads.size(); ++node)
    {
        if (isUsed[node] || leads[node].size() != 1 || leads[node].front().isOpAmp() || leads[node].front().isSwitch())
            continue;
        const auto& part = *leads[node].front().part;
        findings.addWarning (
            part.name,
            "Only " + partWords (part.name) + " touches " + nodeWords (nodes.nameOf (static_cast<int> (node)))
                + ", so no current flows through that lead; connect it, or name the node \"0\" if common was meant.");
    }
}

void checkRestingVoltages (const Netlist& netlist, const NodeMap& nodes, FindingList& findings)
{
    const auto floating = nodeIslands (netlist, nodes, PathKind::any);
    for (const auto& island : nodeIslands (netlist, nodes, PathKind::direct))
    {
        const auto holds = [&island] (const std::vector<int>& other)
        { return std::find (other.begin(), other.end(), island.front()) != other.end(); };
        if (std::any_of (floating.begin(), floating.end(), holds))
            continue;
        const auto names = namesOf (island, nodes);
        findings.addWarning (
            names.front(),
            capitalised (nodesWords (names)) + (names.size() == 1 ? " reaches" : " reach")
                + " common through capacitors only, so the resting voltage there is whatever charge was left;"
                  " connect a large resistor to common or state the capacitors' leak.");
    }
}

} // namespace

void checkConnections (const Netlist& netlist, const NodeMap& nodes, FindingList& findings)
{
    const auto leads = collectLeads (netlist, nodes);
    checkShortedParts (netlist, findings);
    checkEndpoints (netlist, findings);
    checkIslands (netlist, nodes, leads, findings);
    checkLooseLeads (netlist, nodes, leads, findings);
    checkRestingVoltages (netlist, nodes, findings);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NameCheck.h"

#include "Circuit/CircuitLimits.h"
#include "Circuit/FindingWords.h"
#include "Circuit/Junction.h"

#include <map>
#include <set>

namespace stopwright
{

namespace
{

std::string kindOf (const Part& part)
{
    const std::string kind (kindName (part.value));
    const bool startsOpen = kind.front() == 'i' || kind.front() == 'o' || kind.front() == 'n'; // "an npn transistor"
    return (startsOpen ? "an " : "a ") + kind;
}

void checkMissingNames (const Netlist& netlist, FindingList& findings)
{
    for (std::size_t index = 0; index < netlist.sources.size(); ++index)
        if (netlist.sources[index].name.empty())
            findings.addError ("", "Tap " + std::to_string (index + 1) + " has no name; give it one, such as W1.");
    for (std::size_t index = 0; index < netlist.parts.size(); ++index)
        if (netlist.parts[index].name.empty())
            findings.addError ("", "Part " + std::to_string (index + 1) + " (" + kindOf (netlist.parts[index])
                                       + ") has no name; give it one of its own.");
}

void checkRepeatedNames (const Netlist& netlist, FindingList& findings)
{
    std::map<std::string_view, std::string_view> owners;
    const auto note = [&] (std::string_view name, std::string_view what)
    {
        if (name.empty())
            return;
        const auto [place, isFresh] = owners.try_emplace (name, what);
        if (isFresh)
            return;
        const std::string who = place->second == what
                                    ? "Two " + std::string (what) + "s are"
                                    : "A " + std::string (place->second) + " and a " + std::string (what) + " are";
        findings.addError (name, who + " called " + partWords (name) + "; give each a name of its own.");
    };
    for (const auto& source : netlist.sources)
        note (source.name, "tap");
    for (const auto& part : netlist.parts)
        note (part.name, "part");
}

void checkLeads (const Part& part, FindingList& findings)
{
    const auto expected = leadCount (part.value);
    if (part.nodes.size() != expected)
        findings.addError (part.name, partWords (part.name) + " is " + kindOf (part) + " and needs "
                                          + std::to_string (expected) + " nodes, but has "
                                          + std::to_string (part.nodes.size()) + "; name one node for each lead.");
    for (const auto& node : part.nodes)
        if (node.empty())
            findings.addError (part.name,
                               partWords (part.name) + " has a lead whose node has no name; name the node it goes to.");
}

void checkNodeNames (const Netlist& netlist, FindingList& findings)
{
    for (const auto& source : netlist.sources)
        if (source.node.empty())
            findings.addError (source.name,
                               "Tap " + partWords (source.name) + " feeds no node; name the node it goes to.");
    for (const auto& part : netlist.parts)
        checkLeads (part, findings);
    if (netlist.output.empty())
        findings.addError ("", "The network has no output; name the node that is listened to.");
}

int countNodes (const Netlist& netlist)
{
    std::set<std::string_view> names { netlist.output };
    for (const auto& source : netlist.sources)
        names.insert (source.node);
    for (const auto& part : netlist.parts)
        names.insert (part.nodes.begin(), part.nodes.end());
    names.erase (commonNode);
    return static_cast<int> (names.size());
}

int countStates (const Netlist& netlist)
{
    int count = 0;
    for (const auto& part : netlist.parts)
    {
        const auto* inductor = std::get_if<Inductor> (&part.value);
        const auto* amplifier = std::get_if<OpAmp> (&part.value);
        if (std::holds_alternative<Capacitor> (part.value) || inductor != nullptr)
            ++count;
        if (inductor != nullptr && inductor->selfFarads != 0.0)
            ++count;
        if (amplifier != nullptr && amplifier->gainBandwidthHz)
            ++count;
    }
    return count;
}

int countJunctions (const Netlist& netlist)
{
    std::size_t count = 0;
    for (const auto& part : netlist.parts)
        count += junctionsOf (part.value).size();
    return static_cast<int> (count);
}

void checkSize (int count, int most, const std::string& what, FindingList& findings)
{
    if (count > most)
        findings.addError ("", "The network has " + std::to_string (count) + " " + what + "; at most "
                                   + std::to_string (most) + " fit on one card, so split it over two cards.");
}

} // namespace

void checkNames (const Netlist& netlist, FindingList& findings)
{
    checkMissingNames (netlist, findings);
    checkRepeatedNames (netlist, findings);
    checkNodeNames (netlist, findings);
    checkSize (static_cast<int> (netlist.parts.size()), CircuitLimits::parts, "parts", findings);
    checkSize (static_cast<int> (netlist.sources.size()), CircuitLimits::sources, "taps", findings);
    checkSize (countNodes (netlist), CircuitLimits::nodes, "nodes besides common", findings);
    checkSize (countStates (netlist), CircuitLimits::states,
               "energy stores (capacitors, inductors, coil self-capacitances, op-amps with a gain-bandwidth)",
               findings);
    checkSize (countJunctions (netlist), CircuitLimits::junctions, "junctions (one for a diode, two for a transistor)",
               findings);
}

} // namespace stopwright

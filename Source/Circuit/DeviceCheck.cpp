// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/DeviceCheck.h"

#include "Circuit/FindingWords.h"
#include "Circuit/Junction.h"
#include "Circuit/NodeIslands.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// Something without resistance that lays down the voltage between two nodes.
struct Rigid
{
    std::string words; ///< "tap W1", "supply V1", "the output of U1"
    int from = 0;
    int to = 0;
};

/// Those that join `from` and `to`, in the order of the way, or nothing when they do not.
std::vector<std::string> wayBetween (const std::vector<Rigid>& rigids, int from, int to, std::vector<bool>& isUsed)
{
    for (std::size_t index = 0; index < rigids.size(); ++index)
    {
        const auto& rigid = rigids[index];
        if (isUsed[index] || (rigid.from != from && rigid.to != from))
            continue;
        isUsed[index] = true;
        const int next = rigid.from == from ? rigid.to : rigid.from;
        auto way = next == to ? std::vector<std::string>() : wayBetween (rigids, next, to, isUsed);
        if (next != to && way.empty())
            continue;
        way.insert (way.begin(), rigid.words);
        return way;
    }
    return {};
}

std::vector<Rigid> rigidsBesidesSupplies (const Netlist& netlist, const NodeMap& nodes)
{
    std::vector<Rigid> rigids;
    for (const auto& source : netlist.sources)
        if (source.sourceOhms == 0.0)
            rigids.push_back ({ "tap " + partWords (source.name), nodes.find (source.node), NodeMap::common });
    for (const auto& part : netlist.parts)
        if (std::holds_alternative<OpAmp> (part.value))
            rigids.push_back (
                { "the output of " + partWords (part.name), nodes.find (part.nodes[2]), NodeMap::common });
    return rigids;
}

std::string joined (const std::vector<std::string>& words)
{
    std::string text;
    for (std::size_t index = 0; index < words.size(); ++index)
        text += (index == 0 ? "" : index + 1 == words.size() ? " and " : ", ") + words[index];
    return text;
}

void checkSupplies (const Netlist& netlist, const NodeMap& nodes, FindingList& findings)
{
    auto rigids = rigidsBesidesSupplies (netlist, nodes);
    for (const auto& part : netlist.parts)
    {
        const auto* supply = std::get_if<Supply> (&part.value);
        if (supply == nullptr || supply->seriesOhms != 0.0)
            continue;
        const int plus = nodes.find (part.nodes[0]);
        const int minus = nodes.find (part.nodes[1]);
        if (plus == minus)
        {
            findings.addError (part.name, "Supply " + partWords (part.name)
                                              + " has both leads on one node, which shorts it; open the switch or move "
                                                "a lead.");
            continue;
        }
        std::vector<bool> isUsed (rigids.size(), false);
        if (const auto rivals = wayBetween (rigids, plus, minus, isUsed); ! rivals.empty())
            findings.addError (part.name, "Supply " + partWords (part.name) + " lies across "
                                              + nodeWords (part.nodes[0]) + " and " + nodeWords (part.nodes[1])
                                              + ", whose voltage " + joined (rivals)
                                              + (rivals.size() == 1 ? " lays" : " lay")
                                              + " down already; give it a series resistance or remove it.");
        rigids.push_back ({ "supply " + partWords (part.name), plus, minus });
    }
}

/// What a lead is called: "anode", "base" ...
std::string_view leadWord (const PartValue& value, std::size_t lead)
{
    constexpr std::array<std::string_view, 2> ofDiode { "anode", "cathode" };
    constexpr std::array<std::string_view, 3> ofTransistor { "collector", "base", "emitter" };
    return transistorIn (value) != nullptr ? ofTransistor[lead] : ofDiode[lead];
}

/// Where parts other than diodes and transistors leave a group of nodes without a way for direct current, at least two
/// of their leads must meet: what flows into one flows out of the other.
void checkBias (const Netlist& netlist, const NodeMap& nodes, FindingList& findings)
{
    auto rest = netlist;
    std::erase_if (rest.parts, [] (const Part& part) { return ! junctionsOf (part.value).empty(); });
    for (const auto& island : nodeIslands (rest, nodes, PathKind::direct))
    {
        const Part* owner = nullptr;
        std::size_t ownLead = 0;
        int leads = 0;
        for (const auto& part : netlist.parts)
            for (std::size_t lead = 0; lead < part.nodes.size() && ! junctionsOf (part.value).empty(); ++lead)
                if (std::find (island.begin(), island.end(), nodes.find (part.nodes[lead])) != island.end())
                {
                    ++leads;
                    owner = &part;
                    ownLead = lead;
                }
        if (leads == 1)
            findings.addWarning (owner->name, "No direct current reaches the "
                                                  + std::string (leadWord (owner->value, ownLead)) + " of "
                                                  + partWords (owner->name) + " at " + nodeWords (owner->nodes[ownLead])
                                                  + ", so it stays off at rest; connect a resistor for its bias.");
    }
}

} // namespace

void checkDevices (const Netlist& netlist, const NodeMap& nodes, FindingList& findings)
{
    if (! hasDevices (netlist))
        return;
    checkSupplies (netlist, nodes, findings);
    checkBias (netlist, nodes, findings);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/CardLead.h"

#include "Circuit/FindingWords.h"
#include "Organ/CardItems.h"
#include "Units/Error.h"

#include <algorithm>

namespace stopwright
{

std::vector<CardLead> leadsAt (const Card& card, std::string_view node)
{
    std::vector<CardLead> leads;
    for (const auto& tap : card.taps)
        if (tap.node == node)
            leads.push_back ({ CardLead::Owner::tap, tap.name, 0 });
    for (const auto& part : card.parts)
        for (std::size_t lead = 0; lead < part.nodes.size(); ++lead)
            if (part.nodes[lead] == node)
                leads.push_back ({ CardLead::Owner::part, part.name, lead });
    if (card.output == node)
        leads.push_back ({ CardLead::Owner::output, {}, 0 });
    return leads;
}

std::vector<std::string> nodesOf (const Card& card)
{
    std::vector<std::string> nodes;
    const auto note = [&nodes] (const std::string& node)
    {
        if (std::ranges::find (nodes, node) == nodes.end())
            nodes.push_back (node);
    };
    for (const auto& tap : card.taps)
        note (tap.node);
    for (const auto& part : card.parts)
        std::ranges::for_each (part.nodes, note);
    note (card.output);
    return nodes;
}

std::string& nodeOf (Card& card, const CardLead& lead)
{
    if (lead.owner == CardLead::Owner::output)
        return card.output;
    if (lead.owner == CardLead::Owner::tap)
        return tapNamed (card, lead.name).node;
    auto& part = partNamed (card, lead.name);
    if (lead.lead >= part.nodes.size())
        throw Error (partWords (part.name) + " has " + std::to_string (part.nodes.size())
                     + " leads, so there is no lead " + std::to_string (lead.lead + 1)
                     + "; choose one of those it has.");
    return part.nodes[lead.lead];
}

} // namespace stopwright

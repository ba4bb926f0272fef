// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingWords.h"
#include "Organ/CardEdit.h"
#include "Organ/DocumentGuard.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

bool hasNode (const Card& card, std::string_view node)
{
    return ! leadsAt (card, node).empty();
}

/// Common is a node of every card, wired or not.
void requireNode (const Card& card, std::string_view node)
{
    if (node != commonNode && ! hasNode (card, node))
        throw Error ("There is no " + nodeWords (node) + " on this card; it has " + nodesWords (nodesOf (card)) + ".");
}

/// A document may hold a node "common" beside node 0, but nobody could tell the two apart.
bool isCalledCommon (std::string_view node)
{
    constexpr std::string_view word = "common";
    return node == commonNode
           || std::ranges::equal (node, word, [] (char one, char other) { return (one | 0x20) == other; });
}

void requireNewNode (const Card& card, std::string_view node)
{
    requireName (node);
    if (isCalledCommon (node))
        throw Error ("The name " + quotedText (node)
                     + " is that of circuit common; choose another, or join the node to common.");
    if (hasNode (card, node))
        throw Error ("There is a " + nodeWords (node) + " on this card already; choose another name, or join the two.");
}

void moveAll (Card& card, std::string_view from, const std::string& to)
{
    const auto move = [from, &to] (std::string& node)
    {
        if (node == from)
            node = to;
    };
    for (auto& tap : card.taps)
        move (tap.node);
    for (auto& part : card.parts)
        std::ranges::for_each (part.nodes, move);
    move (card.output);
}

} // namespace

std::string proposedNodeName (const Card& card)
{
    int number = 1;
    const auto name = [&number] { return std::string ("n").append (std::to_string (number)); };
    while (hasNode (card, name()))
        ++number;
    return name();
}

Card joinNodes (Card card, std::string_view kept, std::string_view joined)
{
    requireNode (card, kept);
    requireNode (card, joined);
    if (joined == commonNode)
        std::swap (kept, joined);
    moveAll (card, std::string (joined), std::string (kept));
    return card;
}

Card splitNode (Card card, std::string_view node, const std::vector<CardLead>& leads, std::string newNode)
{
    requireNode (card, node);
    if (leads.empty())
        throw Error ("Nothing is to be taken off " + nodeWords (node) + "; choose at least one lead there.");
    if (newNode.empty())
        newNode = proposedNodeName (card);
    requireNewNode (card, newNode);
    for (const auto& lead : leads)
    {
        auto& place = nodeOf (card, lead);
        if (place != node)
            throw Error ((lead.owner == CardLead::Owner::output ? std::string ("The output")
                                                                : "That lead of " + partWords (lead.name))
                         + " is at " + nodeWords (place) + " and not at " + nodeWords (node)
                         + "; choose leads of one node.");
        place = newNode;
    }
    return card;
}

Card renameNode (Card card, std::string_view node, const std::string& newName)
{
    requireNode (card, node);
    if (node == newName)
        return card;
    if (node == commonNode)
        throw Error ("Circuit common is called \"0\" on every card; leave it so.");
    requireNewNode (card, newName);
    for (const auto& tap : card.taps)
        if (tap.asFound && tap.asFound->node == newName)
            throw Error (capitalised (nodeWords (newName)) + " is where tap " + partWords (tap.name)
                         + " was found; choose another name, so that it can be put back.");
    const std::string former (node);
    moveAll (card, former, newName);
    for (auto& tap : card.taps)
        if (tap.asFound && tap.asFound->node == former)
            tap.asFound->node = newName;
    return card;
}

} // namespace stopwright

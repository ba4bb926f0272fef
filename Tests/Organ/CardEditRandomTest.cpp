// SPDX-License-Identifier: GPL-3.0-or-later
//
// Edits of any card, one after the other: each can be taken back to the byte, and a document holds whatever comes of them.
#include "Organ/CardDocument.h"
#include "Organ/CardEdit.h"
#include "Organ/CardItems.h"
#include "Organ/SampleDocuments.h"
#include "Organ/UsualParts.h"
#include "Support/Random.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stopwright
{

namespace
{

template <typename List>
auto anyOf (const List& list, Random& random)
{
    return list[static_cast<std::size_t> (random.integer (0, static_cast<int> (list.size()) - 1))];
}

/// A name as a user types one, free on the card.
std::string freshName (const Card& card, Random& random)
{
    static const std::vector<std::string> stems { "R", "Filter coil ", "\xC3\x9C", "part:R1", "#", "\"" };
    std::string name;
    do
        name = anyOf (stems, random) + std::to_string (random.integer (1, 9999));
    while (isNameTaken (card, name) || ! leadsAt (card, name).empty());
    return name;
}

/// An edited card and the way back.
struct Edit
{
    std::string what;
    Card card;
    Card back;
};

Edit editParts (const Card& card, Random& random)
{
    const auto nodes = nodesOf (card);
    if (card.parts.empty() || random.chance (0.4))
    {
        const auto& value = anyOf (usualParts(), random);
        std::vector<std::string> leads;
        for (std::size_t lead = 0; lead < leadCount (value); ++lead)
            leads.push_back (anyOf (nodes, random));
        auto added = addPart (card, value, leads);
        auto back = removePart (added, added.parts.back().name);
        return { "add part", added, back };
    }
    const auto part = anyOf (card.parts, random);
    if (random.chance (0.5))
    {
        const auto name = freshName (card, random);
        auto renamed = renamePart (card, part.name, name);
        return { "rename part " + part.name + " to " + name, renamed, renamePart (renamed, name, part.name) };
    }
    const auto lead = static_cast<std::size_t> (random.integer (0, static_cast<int> (part.nodes.size()) - 1));
    const auto node = random.chance (0.5) ? anyOf (nodes, random) : freshName (card, random);
    auto rewired = rewireLead (card, part.name, lead, node);
    return { "rewire " + part.name, rewired, rewireLead (rewired, part.name, lead, part.nodes[lead]) };
}

Edit editTaps (const Card& card, Random& random)
{
    const auto tap = anyOf (card.taps, random);
    if (card.taps.size() < 8 && random.chance (0.3))
    {
        auto added = addTap (card, KeyedBus {}, anyOf (nodesOf (card), random));
        return { "add tap", added, removeTap (added, added.taps.back().name) };
    }
    if (random.chance (0.5))
    {
        const auto name = freshName (card, random);
        auto renamed = renameTap (card, tap.name, name);
        return { "rename tap", renamed, renameTap (renamed, name, tap.name) };
    }
    auto rewired = rewireTap (card, tap.name, freshName (card, random));
    return { "rewire tap", rewired, rewireTap (rewired, tap.name, tap.node) };
}

Edit editNodes (const Card& card, Random& random)
{
    const auto nodes = nodesOf (card);
    const auto node = anyOf (nodes, random);
    const auto fresh = freshName (card, random);
    const auto other = anyOf (nodes, random);
    if (random.chance (0.3) && node != commonNode)
    {
        auto renamed = renameNode (card, node, fresh);
        return { "rename node", renamed, renameNode (renamed, fresh, node) };
    }
    if (random.chance (0.3) && other != node && other != commonNode)
    {
        auto joined = joinNodes (card, node, other);
        return { "join nodes", joined, splitNode (joined, node, leadsAt (card, other), other) };
    }
    if (random.chance (0.3))
    {
        auto moved = setOutput (card, other);
        return { "set output", moved, setOutput (moved, card.output) };
    }
    auto leads = leadsAt (card, node);
    leads.resize (static_cast<std::size_t> (random.integer (1, static_cast<int> (leads.size()))), leads.front());
    auto split = splitNode (card, node, leads, fresh);
    if (node != commonNode && leadsAt (split, node).empty())
        return { "split off all", split, splitNode (split, fresh, leadsAt (split, fresh), node) };
    return { "split node", split, joinNodes (split, node, fresh) };
}

Edit anyEdit (const Card& card, Random& random)
{
    switch (random.integer (0, 2))
    {
        case 0:
            return editParts (card, random);
        case 1:
            return editTaps (card, random);
        default:
            return editNodes (card, random);
    }
}

/// Names of parts and taps that are each their own: where two share one, the first is meant, and that is no way back.
bool hasOwnNames (const Card& card)
{
    std::vector<std::string> names;
    for (const auto& part : card.parts)
        names.push_back (part.name);
    for (const auto& tap : card.taps)
        names.push_back (tap.name);
    std::ranges::sort (names);
    return std::ranges::adjacent_find (names) == names.end();
}

} // namespace

TEST (CardEdits, CanEachBeTakenBackToTheByte)
{
    Random random (20261127);
    int edits = 0;
    for (const auto& file : sampleDocuments ("good", "card"))
    {
        auto card = readCard (file);
        if (! hasOwnNames (card))
            continue;
        for (int round = 0; round < 100; ++round)
        {
            const auto before = cardText (card);
            auto edit = anyEdit (card, random);
            ASSERT_EQ (cardText (edit.back), before) << file << ": " << edit.what;
            ASSERT_EQ (cardText (card), before) << edit.what;
            const auto after = cardText (edit.card);
            ASSERT_EQ (cardText (parseCard (after, "edited")), after) << edit.what;
            ++edits;
            card = card.parts.size() < 40 ? std::move (edit.card) : readCard (file);
        }
    }
    EXPECT_GT (edits, 500);
}

/// Nothing of a part or tap that stays is lost: each unknown field is there as long as its owner is.
TEST (CardEdits, KeepUnknownFieldsOfWhatStays)
{
    Random random (20261128);
    auto card = readCard (STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/card-unknown-fields.json");
    const auto kept = card.unknownFields.size();
    for (int round = 0; round < 300; ++round)
        card = anyEdit (card, random).card;
    EXPECT_EQ (card.unknownFields.size(), kept);
    EXPECT_EQ (parseCard (cardText (card), "edited").unknownFields, card.unknownFields);
}

} // namespace stopwright

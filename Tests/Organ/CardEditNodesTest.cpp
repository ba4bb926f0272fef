// SPDX-License-Identifier: GPL-3.0-or-later
//
// Nodes of a card: joined, split and renamed.
#include "Organ/CardDocument.h"
#include "Organ/CardEdit.h"
#include "Organ/ErrorSentence.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

Card divider()
{
    return parseCard (R"({"stopwright":1,"kind":"card","taps":[{"name":"W1","wave":"square","node":"in"}],
        "parts":[{"name":"R1","kind":"resistor","nodes":["in","a"],"value":"10k"},
                 {"name":"R2","kind":"resistor","nodes":["a","b"],"value":"10k"},
                 {"name":"C1","kind":"capacitor","nodes":["b","0"],"value":"10n"}],"output":"b"})",
                      "divider.json");
}

CardLead end (const std::string& part, std::size_t lead)
{
    return { CardLead::Owner::part, part, lead };
}

const CardLead output { CardLead::Owner::output, {}, 0 };

} // namespace

TEST (CardEditNodes, AreListedWithWhatIsThere)
{
    EXPECT_EQ (nodesOf (divider()), (std::vector<std::string> { "in", "a", "b", "0" }));
    EXPECT_EQ (leadsAt (divider(), "in"), (std::vector<CardLead> { { CardLead::Owner::tap, "W1", 0 }, end ("R1", 0) }));
    EXPECT_EQ (leadsAt (divider(), "b"), (std::vector<CardLead> { end ("R2", 1), end ("C1", 0), output }));
    EXPECT_TRUE (leadsAt (divider(), "c").empty());
}

TEST (CardEditNodes, JoinUnderTheFirstName)
{
    const auto joined = joinNodes (divider(), "a", "b");
    EXPECT_EQ (joined.output, "a");
    EXPECT_EQ (joined.parts[1].nodes, (std::vector<std::string> { "a", "a" }));
    EXPECT_EQ (joined.parts[2].nodes, (std::vector<std::string> { "a", "0" }));
    EXPECT_EQ (cardText (splitNode (joined, "a", { end ("R2", 1), end ("C1", 0), output }, "b")), cardText (divider()));
    EXPECT_EQ (cardText (joinNodes (divider(), "a", "a")), cardText (divider()));
}

TEST (CardEditNodes, JoinedToCommonAreCommon)
{
    for (const auto& card : { joinNodes (divider(), "0", "a"), joinNodes (divider(), "a", "0") })
    {
        EXPECT_EQ (card.parts[0].nodes, (std::vector<std::string> { "in", "0" }));
        EXPECT_EQ (card.parts[2].nodes, (std::vector<std::string> { "b", "0" }));
    }
    EXPECT_EQ (errorSentence ([] { joinNodes (divider(), "a", "c"); }),
               "There is no node \"c\" on this card; it has nodes \"in\", \"a\", \"b\" and \"0\".");
}

TEST (CardEditNodes, SplitOffToANewNode)
{
    const auto card = splitNode (divider(), "b", { end ("C1", 0) });
    EXPECT_EQ (card.parts[2].nodes, (std::vector<std::string> { "n1", "0" }));
    EXPECT_EQ (card.output, "b");
    EXPECT_EQ (cardText (joinNodes (card, "b", "n1")), cardText (divider()));
    EXPECT_EQ (errorSentence ([] { splitNode (divider(), "b", {}); }),
               "Nothing is to be taken off node \"b\"; choose at least one lead there.");
    EXPECT_EQ (errorSentence ([] { splitNode (divider(), "b", { end ("R1", 0) }); }),
               "That lead of R1 is at node \"in\" and not at node \"b\"; choose leads of one node.");
    EXPECT_EQ (errorSentence ([] { splitNode (divider(), "a", { output }); }),
               "The output is at node \"b\" and not at node \"a\"; choose leads of one node.");
    EXPECT_EQ (errorSentence ([] { splitNode (divider(), "b", { output }, "a"); }),
               "There is a node \"a\" on this card already; choose another name, or join the two.");
    EXPECT_EQ (errorSentence ([] { splitNode (divider(), "b", { output }, "0"); }),
               "The name \"0\" is that of circuit common; choose another, or join the node to common.");
}

TEST (CardEditNodes, AreRenamedEverywhere)
{
    const auto card = renameNode (divider(), "b", "out");
    EXPECT_EQ (card.output, "out");
    EXPECT_EQ (card.parts[1].nodes[1], "out");
    EXPECT_EQ (card.parts[2].nodes[0], "out");
    EXPECT_EQ (cardText (renameNode (card, "out", "b")), cardText (divider()));
    EXPECT_EQ (errorSentence ([] { renameNode (divider(), "0", "earth"); }),
               "Circuit common is called \"0\" on every card; leave it so.");
    EXPECT_EQ (errorSentence ([] { renameNode (divider(), "a", "b"); }),
               "There is a node \"b\" on this card already; choose another name, or join the two.");
    EXPECT_EQ (errorSentence ([] { renameNode (divider(), "a", ""); }), "A name is empty; give it one.");
    for (const auto* common : { "0", "common", "Common" })
        EXPECT_EQ (errorSentence ([&] { renameNode (divider(), "a", common); }),
                   "The name \"" + std::string (common)
                       + "\" is that of circuit common; choose another, or join the node to common.");
    EXPECT_EQ (renameNode (divider(), "b", "common bus").output, "common bus");
    EXPECT_NE (errorSentence ([] { renameNode (divider(), "a", "new\nline"); }), "");
    EXPECT_NE (errorSentence ([] { renameNode (divider(), "a", std::string (65, 'n')); }), "");
    EXPECT_NE (errorSentence ([] { renameNode (divider(), "z", "y"); }), "");
    EXPECT_EQ (renameNode (divider(), "in", "start").taps.front().node, "start");
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/CardEdit.h"

#include "Circuit/NetlistCheck.h"
#include "Organ/CardDocument.h"
#include "Organ/ErrorSentence.h"
#include "Organ/UsualParts.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{

namespace
{

Card reed()
{
    return parseCard (R"({"stopwright":1,"kind":"card","name":"Reed 8",
        "taps":[{"name":"W1","wave":"square","node":"in","colour":"red"},{"name":"Pulse 8","wave":"square","node":"p"}],
        "parts":[{"name":"R1","kind":"resistor","nodes":["in","t"],"value":"47k","make":"carbon"},
                 {"name":"R2","kind":"resistor","nodes":["p","t"],"value":"47k"},
                 {"name":"R6","kind":"resistor","nodes":["t","0"],"value":"10k","make":"film"},
                 {"name":"P1","kind":"potentiometer","nodes":["t","out","0"],"value":"22k"}],
        "output":"out"})",
                      "reed.json");
}

Resistor tenKilohm()
{
    return std::get<Resistor> (usualParts().front());
}

} // namespace

TEST (CardEdit, ProposesTheNameAfterTheHighest)
{
    EXPECT_EQ (proposedPartName (reed(), Resistor {}), "R7");
    EXPECT_EQ (proposedPartName (reed(), Capacitor {}), "C1");
    EXPECT_EQ (proposedPartName (reed(), Potentiometer {}), "VR1");
    EXPECT_EQ (proposedTapName (reed()), "W2");
    EXPECT_EQ (proposedTapName (reed(), "Square 8"), "Square 8");
    EXPECT_EQ (proposedTapName (reed(), "Pulse 8"), "W2");
    EXPECT_EQ (proposedNodeName (reed()), "n1");
}

TEST (CardEdit, AddsAPartOfEveryKindThatTheNetworkCanStandOn)
{
    for (const auto& usual : usualParts())
    {
        std::vector<std::string> nodes { "t", "0", "x" };
        nodes.resize (leadCount (usual));
        const auto card = addPart (reed(), usual, nodes);
        EXPECT_EQ (card.parts.back().nodes, nodes);
        EXPECT_EQ (cardText (parseCard (cardText (card), "c")), cardText (card)) << kindName (usual);
        EXPECT_EQ (cardText (removePart (card, card.parts.back().name)), cardText (reed())) << kindName (usual);
    }
    EXPECT_EQ (tenKilohm().ohms, 10e3);
}

TEST (CardEdit, RefusesWhatADocumentCannotHold)
{
    const auto refusal = [] (const PartValue& value, const std::vector<std::string>& nodes, const std::string& name)
    { return errorSentence ([&] { addPart (reed(), value, nodes, name); }); };
    EXPECT_EQ (refusal (tenKilohm(), { "in", "t" }, "R1"), "The name \"R1\" is taken on this card; choose another.");
    EXPECT_EQ (refusal (tenKilohm(), { "in", "t" }, "W1"), "The name \"W1\" is taken on this card; choose another.");
    EXPECT_EQ (refusal (tenKilohm(), { "in", "t", "o" }, "R9"),
               "Part R9: 'nodes' must be a list of 2 nodes: its two ends.");
    EXPECT_EQ (refusal (tenKilohm(), { "in", "" }, "R9"), "Part R9: a name is empty; give it one.");
    EXPECT_EQ (refusal (tenKilohm(), { "in", "a\nb" }, "R9"),
               "Part R9: the name \"a?b\" has control characters in it; leave them out.");
    EXPECT_EQ (
        refusal (tenKilohm(), { "in", "t" }, std::string (65, 'R')),
        "The name \"RRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRRR...\" is longer than 64 characters; shorten it.");
    EXPECT_EQ (refusal (tenKilohm(), { "in", "t" }, "R\xFF"),
               "The name \"R?\" has bytes that are no text (UTF-8); type it again.");
    EXPECT_EQ (refusal (Resistor { 0.0 }, { "in", "t" }, "R9").substr (0, 48),
               "Part R9: the resistance is 0 \xCE\xA9 but must be from");
    EXPECT_NE (refusal (Resistor { std::nan ("") }, { "in", "t" }, "R9").find ("finite"), std::string::npos);
}

TEST (CardEdit, AsksForRoom)
{
    auto card = reed();
    while (card.parts.size() < 256)
        card = addPart (std::move (card), tenKilohm(), { "t", "0" });
    EXPECT_EQ (card.parts.back().name, "R258");
    EXPECT_EQ (errorSentence (
                   [&] {
                       addPart (card, tenKilohm(), { "t", "0" });
                   }),
               "A card holds at most 256 parts; remove one first, or split the network over two cards.");
    card = reed();
    while (card.taps.size() < 8)
        card = addTap (std::move (card), KeyedBus {}, "in");
    EXPECT_EQ (errorSentence ([&] { addTap (card, KeyedBus {}, "in"); }),
               "A card holds at most 8 taps; remove one first, or split the network over two cards.");
}

TEST (CardEdit, RemovesAPartWithItsUnknownFields)
{
    const auto card = removePart (reed(), "R1");
    EXPECT_EQ (card.parts.size(), 3U);
    EXPECT_FALSE (card.unknownFields.contains ("part:R1"));
    EXPECT_TRUE (card.unknownFields.contains ("part:R6"));
    EXPECT_EQ (errorSentence ([] { removePart (reed(), "R3"); }),
               "There is no part \"R3\" on this card; did you mean \"R1\"?");
    EXPECT_EQ (errorSentence ([] { removePart (reed(), "Coil 7"); }),
               "There is no part \"Coil 7\" on this card; it has R1, R2, R6 and P1.");
}

TEST (CardEdit, RenamesAPartWithItsUnknownFields)
{
    const auto card = renamePart (reed(), "R6", "R60");
    EXPECT_EQ (card.unknownFields.at ("part:R60"), R"({"make":"film"})");
    EXPECT_FALSE (card.unknownFields.contains ("part:R6"));
    EXPECT_EQ (cardText (renamePart (card, "R60", "R6")), cardText (reed()));
    EXPECT_EQ (cardText (renamePart (card, "R60", "R60")), cardText (card));
    EXPECT_EQ (errorSentence ([] { renamePart (reed(), "R6", "Pulse 8"); }),
               "The name \"Pulse 8\" is taken on this card; choose another.");
    EXPECT_EQ (errorSentence ([] { renamePart (reed(), "R6", ""); }), "A name is empty; give it one.");
}

/// A document may hold two parts of one name, and renaming is the way out.
TEST (CardEdit, RenamesTheFirstOfTwoWithOneName)
{
    auto card = reed();
    card.parts[1].name = "R1";
    card.unknownFields["part:R1#2"] = R"({"make":"wire"})";
    const auto renamed = renamePart (card, "R1", "R9");
    EXPECT_EQ (renamed.parts[0].name, "R9");
    EXPECT_EQ (renamed.parts[1].name, "R1");
    EXPECT_EQ (renamed.unknownFields.at ("part:R9"), R"({"make":"carbon"})");
    EXPECT_EQ (renamed.unknownFields.at ("part:R1"), R"({"make":"wire"})");
    EXPECT_FALSE (renamed.unknownFields.contains ("part:R1#2"));
}

TEST (CardEdit, RewiresALead)
{
    const auto card = rewireLead (reed(), "P1", 1, "fresh");
    EXPECT_EQ (card.parts[3].nodes, (std::vector<std::string> { "t", "fresh", "0" }));
    EXPECT_EQ (cardText (rewireLead (card, "P1", 1, "out")), cardText (reed()));
    EXPECT_EQ (errorSentence ([] { rewireLead (reed(), "P1", 3, "t"); }),
               "P1 has 3 leads, so there is no lead 4; choose one of those it has.");
    EXPECT_EQ (errorSentence ([] { rewireLead (reed(), "P1", 0, ""); }), "A name is empty; give it one.");
}

TEST (CardEdit, LeavesAnImpossibleNetworkToTheCheckOfNetworks)
{
    const auto card = removePart (removePart (reed(), "R6"), "P1");
    const auto findings = findFaults (netlistOf (card));
    ASSERT_FALSE (findings.empty());
    EXPECT_EQ (findings.front().severity, Severity::error);
}

TEST (CardEdit, AddsATapFromAKeyedBus)
{
    KeyedBus bus;
    bus.name = "Square 2 2/3";
    bus.footage = Footage::parse ("2 2/3");
    bus.wave.duty = 0.25;
    bus.voltsPeakToPeak = 0.3;
    bus.sourceOhms = 1e3;
    const auto card = addTap (reed(), bus, "in");
    const auto& tap = card.taps.back();
    EXPECT_EQ (tap.name, "Square 2 2/3");
    EXPECT_EQ (tap.footage, bus.footage);
    EXPECT_EQ (tap.wave, bus.wave);
    EXPECT_EQ (tap.voltsPeakToPeak, 0.3);
    EXPECT_EQ (tap.sourceOhms, 1e3);
    EXPECT_EQ (tap.node, "in");
    EXPECT_EQ (cardText (removeTap (card, "Square 2 2/3")), cardText (reed()));
}

TEST (CardEdit, AddsAPlainWave)
{
    Tap tap;
    tap.wave.kind = WaveKind::sawtooth;
    tap.node = "saw";
    EXPECT_EQ (addTap (reed(), tap).taps.back().name, "W2");
    tap.voltsPeakToPeak = -1.0;
    EXPECT_EQ (errorSentence ([&] { addTap (reed(), tap); }).substr (0, 38), "Tap W2: the voltage peak to peak is -1");
}

TEST (CardEdit, KeepsTheLastTap)
{
    const auto card = removeTap (reed(), "W1");
    EXPECT_FALSE (card.unknownFields.contains ("tap:W1"));
    EXPECT_EQ (
        errorSentence ([&] { removeTap (card, "Pulse 8"); }),
        "\"Pulse 8\" is the only tap of this card, and a card has at least one; add another before you remove it.");
}

TEST (CardEdit, RenamesAndRewiresATap)
{
    const auto card = rewireTap (renameTap (reed(), "W1", "Square 8"), "Square 8", "t");
    EXPECT_EQ (card.taps[0].node, "t");
    EXPECT_EQ (card.unknownFields.at ("tap:Square 8"), R"({"colour":"red"})");
    EXPECT_EQ (cardText (renameTap (rewireTap (card, "Square 8", "in"), "Square 8", "W1")), cardText (reed()));
    EXPECT_EQ (errorSentence ([] { renameTap (reed(), "W1", "R1"); }),
               "The name \"R1\" is taken on this card; choose another.");
    EXPECT_EQ (errorSentence ([] { rewireTap (reed(), "W9", "t"); }),
               "There is no tap \"W9\" on this card; did you mean \"W1\"?");
}

TEST (CardEdit, ListensElsewhere)
{
    EXPECT_EQ (setOutput (reed(), "t").output, "t");
    EXPECT_EQ (errorSentence ([] { setOutput (reed(), "\x01"); }),
               "The name \"?\" has control characters in it; leave them out.");
}

} // namespace stopwright

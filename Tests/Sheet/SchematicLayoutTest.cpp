// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SchematicLayout.h"

#include "Circuit/CircuitLimits.h"
#include "Circuit/DeviceNetworks.h"
#include "Circuit/SampleNetworks.h"
#include "Sheet/SheetCards.h"
#include "Sheet/SheetFaults.h"
#include "Sheet/SheetGrid.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

void expectFaultless (const Card& card, const std::string& name)
{
    const auto layout = layOutSchematic (card);
    const auto faults = sheetFaults (card, layout);
    EXPECT_TRUE (faults.empty()) << name << ": " << faults.size() << " faults, the first: " << faults.front();
}

bool haveSamePlaces (const SheetItem& item, const SheetItem& other)
{
    return item.middle == other.middle && item.pose == other.pose && item.labelBox == other.labelBox;
}

} // namespace

TEST (SchematicLayout, DrawsTheSampleNetworks)
{
    for (const auto& sample : sampleNetworks())
        expectFaultless (cardOf (sample.netlist), sample.name);
    expectFaultless (cardOf (largeCard()), "large card");
}

TEST (SchematicLayout, DrawsTransistorStages)
{
    expectFaultless (cardOf (clipper (10e3, 10e-9).output ("out")), "clipper");
    expectFaultless (cardOf (emitterFollower (1e-6).output ("out")), "emitter follower");
    expectFaultless (cardOf (commonEmitter (silicon()).output ("out")), "common emitter");
}

TEST (SchematicLayout, DrawsRandomNetworks)
{
    Random random (7101);
    for (int round = 0; round < 60; ++round)
    {
        const auto name = std::to_string (round);
        expectFaultless (cardOf (randomPassiveNetwork (random)), "passive " + name);
        expectFaultless (cardOf (randomActiveNetwork (random)), "active " + name);
        expectFaultless (cardOf (randomDeviceNetwork (random)), "device " + name);
    }
}

TEST (SchematicLayout, DrawsUnfinishedCards)
{
    Random random (7102);
    for (int round = 0; round < 120; ++round)
        expectFaultless (randomUnfinishedCard (random, random.integer (0, 15)), std::to_string (round));
    for (int round = 0; round < 4; ++round)
        expectFaultless (randomUnfinishedCard (random, 60), "60 parts, " + std::to_string (round));
}

TEST (SchematicLayout, DrawsNothingOfAnEmptyCard)
{
    const auto layout = layOutSchematic ({});
    EXPECT_TRUE (layout.items.empty());
    EXPECT_TRUE (layout.nodes.empty());
    EXPECT_GT (layout.width, 0.0);
}

TEST (SchematicLayout, DoesNotDependOnTheOrderInTheDocument)
{
    Random random (7103);
    for (int round = 0; round < 20; ++round)
    {
        const auto card = cardOf (randomActiveNetwork (random));
        const auto other = shuffled (card, random);
        const auto layout = layOutSchematic (card);
        const auto otherLayout = layOutSchematic (other);
        for (const auto& item : layout.items)
            for (const auto& same : otherLayout.items)
                EXPECT_TRUE (item.kind != same.kind || item.name != same.name || haveSamePlaces (item, same))
                    << item.name;
        ASSERT_EQ (layout.nodes.size(), otherLayout.nodes.size());
        for (std::size_t node = 0; node < layout.nodes.size(); ++node)
            EXPECT_EQ (layout.nodes[node].wires, otherLayout.nodes[node].wires);
    }
}

TEST (SchematicLayout, KeepsStillWhileAKnobIsTurned)
{
    auto card = ladderCard (8);
    const auto before = layOutSchematic (card);
    std::get<Resistor> (card.parts[0].value).ohms = 273.0e3;
    const auto after = layOutSchematic (card);
    for (std::size_t item = 0; item < before.items.size(); ++item)
        EXPECT_TRUE (haveSamePlaces (before.items[item], after.items[item]));
    EXPECT_EQ (after.items[1].label.back().text, "273k");
}

TEST (SchematicLayout, LaysALadderOnOneRowOverOneRail)
{
    const auto card = ladderCard (8);
    const auto layout = layOutSchematic (card);
    const auto* tap = layout.findItem (SheetItemKind::tap, 0);
    for (const auto& item : layout.items)
        EXPECT_TRUE (item.kind != SheetItemKind::part || item.name.front() != 'R' || item.middle.y == tap->middle.y)
            << item.name;
    EXPECT_EQ (layout.findItem (SheetItemKind::output, 0)->middle.y, tap->middle.y);
    EXPECT_EQ (layout.findNode ("0")->signs.size(), 1U);
    EXPECT_EQ (crossingsOf (layout), 0);
}

TEST (SchematicLayout, DrawsTheLargestCards)
{
    Random random (7104);
    expectFaultless (ladderCard (CircuitLimits::parts), "ladder");
    for (const int nodes : { 20, 64, 200 })
        expectFaultless (meshCard (random, CircuitLimits::parts, nodes), "mesh of " + std::to_string (nodes));
}

/// What would take seconds to wire, and hours to follow with a finger.
TEST (SchematicLayout, TellsTheNodesOfATangleByNameAtEveryLead)
{
    Random random (7105);
    const auto tangle = layOutSchematic (meshCard (random, CircuitLimits::parts, CircuitLimits::nodes));
    std::size_t signs = 0;
    for (const auto& node : tangle.nodes)
        signs += node.signs.size();
    EXPECT_EQ (signs, 2U * CircuitLimits::parts + 2U) << "the leads of all parts, of the tap and of the output";
    EXPECT_EQ (crossingsOf (tangle), 0);
    for (const auto& card : { meshCard (random, 40, 16), ladderCard (CircuitLimits::parts) })
        for (const auto& node : layOutSchematic (card).nodes)
            EXPECT_TRUE (node.name == commonNode || node.signs.empty()) << node.name << " has its wires";
}

TEST (SchematicLayout, ShortensALongNodeNameWhereItHasNoRoom)
{
    auto card = ladderCard (8);
    const auto rename = [&] (const std::string& from, const std::string& to)
    {
        for (auto& part : card.parts)
            for (auto& node : part.nodes)
                node = node == from ? to : node;
    };
    rename ("n1", "the node behind the first resistor and before the second one");
    rename ("n2", "the node behind the first resistor and before the other one");
    const auto layout = layOutSchematic (card);
    expectFaultless (card, "long names");
    std::vector<std::string> shown;
    for (const auto& node : layout.nodes)
        if (node.name.size() > 40)
            shown.push_back (node.label.text);
    ASSERT_EQ (shown.size(), 2U);
    for (const auto& name : shown)
        EXPECT_NE (name.find ("\u2026"), std::string::npos) << name;
    EXPECT_NE (shown[0], shown[1]);
    for (const auto& node : layout.nodes)
        EXPECT_TRUE (node.label.text.empty() || node.label.size == SheetGrid::captionSize) << node.label.text;
}

} // namespace stopwright

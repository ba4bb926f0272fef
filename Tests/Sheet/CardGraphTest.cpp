// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/CardGraph.h"

#include "Circuit/DeviceNetworks.h"
#include "Sheet/SheetCards.h"
#include "Sheet/SignalLayers.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stopwright
{

namespace
{

std::size_t nodeOf (const CardGraph& graph, const std::string& name)
{
    const auto at = std::find_if (graph.nodes.begin(), graph.nodes.end(),
                                  [&] (const GraphNode& node) { return node.name == name; });
    return static_cast<std::size_t> (at - graph.nodes.begin());
}

} // namespace

TEST (CardGraph, OrdersNamesAsPeopleDo)
{
    EXPECT_TRUE (comesBefore ("R2", "R10"));
    EXPECT_FALSE (comesBefore ("R10", "R2"));
    EXPECT_TRUE (comesBefore ("C9", "R1"));
    EXPECT_TRUE (comesBefore ("R", "R1"));
    EXPECT_TRUE (comesBefore ("R01", "R1")); // one of two names that count alike, always the same
    EXPECT_FALSE (comesBefore ("R1", "R01"));
    EXPECT_FALSE (comesBefore ("R1", "R1"));
}

TEST (CardGraph, TakesSuppliedNodesForRails)
{
    const auto graph = graphOf (cardOf (emitterFollower (1e-6).output ("out")));
    EXPECT_EQ (graph.nodes[nodeOf (graph, "+")].role, NodeRole::rail);
    EXPECT_TRUE (graph.nodes[nodeOf (graph, "+")].isAbove);
    EXPECT_EQ (graph.nodes[nodeOf (graph, "-")].role, NodeRole::rail);
    EXPECT_FALSE (graph.nodes[nodeOf (graph, "-")].isAbove);
    EXPECT_EQ (graph.nodes[nodeOf (graph, "0")].role, NodeRole::common);
    EXPECT_EQ (graph.nodes[nodeOf (graph, "e")].role, NodeRole::signal);
    EXPECT_EQ (graph.loose.size(), 2U); // the supplies
    EXPECT_EQ (graph.islands.size(), 1U);
}

TEST (CardGraph, PutsTheIslandOfTheOutputFirst)
{
    Card card;
    card.parts = { { "R1", { "a", "b" }, Resistor { 1e3 }, 0.0 },
                   { "R2", { "c", "0" }, Resistor { 1e3 }, 0.0 },
                   { "R3", { "0", "0" }, Resistor { 1e3 }, 0.0 } };
    card.output = "c";
    const auto graph = graphOf (card);
    ASSERT_EQ (graph.islands.size(), 2U);
    EXPECT_EQ (graph.islands.front().size(), 2U); // R2 and the output
    EXPECT_EQ (graph.loose.size(), 1U);
}

TEST (SignalLayers, AdvanceAlongALadder)
{
    const auto card = ladderCard (6);
    const auto graph = graphOf (card);
    const auto layers = signalLayers (card, graph, graph.islands.front());
    EXPECT_EQ (layers[nodeOf (graph, "0")], -1);
    for (const int section : { 0, 1, 2, 3 })
        EXPECT_EQ (layers[nodeOf (graph, std::string ("n").append (std::to_string (section)))], section);
}

/// The feedback of a simulated coil leads from the follower's output back to its input.
TEST (SignalLayers, PutAnAmplifiersOutputRightOfItsInput)
{
    NetlistSketch sketch;
    sketch.tap ("in", "a").resistor ("R1", "a", "t", 22e3).capacitor ("C1", "t", "p", 10e-9);
    sketch.resistor ("R2", "p", "0", 220e3).resistor ("R3", "t", "o", 470.0).opAmp ("U1", "p", "o", "o");
    const auto card = cardOf (sketch.output ("t"));
    const auto graph = graphOf (card);
    const auto layers = signalLayers (card, graph, graph.islands.front());
    EXPECT_LT (layers[nodeOf (graph, "t")], layers[nodeOf (graph, "p")]);
    EXPECT_LT (layers[nodeOf (graph, "p")], layers[nodeOf (graph, "o")]);
}

} // namespace stopwright

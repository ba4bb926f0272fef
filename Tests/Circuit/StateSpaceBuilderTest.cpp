// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/StateSpaceBuilder.h"

#include "Circuit/NetlistSketch.h"
#include "Circuit/SampleNetworks.h"
#include "Support/Tolerances.h"

#include <gtest/gtest.h>
#include <map>

namespace stopwright
{

namespace
{

NetworkFault faultOf (const Netlist& netlist)
{
    return StateSpaceBuilder (netlist, { netlist.output }).fault();
}

std::vector<std::string> stateNames (const StateSpaceBuilder& builder)
{
    std::vector<std::string> names;
    names.reserve (static_cast<std::size_t> (builder.stateCount()));
    for (int state = 0; state < builder.stateCount(); ++state)
        names.push_back (builder.quantities()[static_cast<std::size_t> (state)].name);
    return names;
}

using Kind = NetworkFault::Kind;
using Names = std::vector<std::string>;

} // namespace

// Closed form: x' = (u - x) / (R C).
TEST (StateSpaceBuilder, GivesTheResistorCapacitorEquation)
{
    NetlistSketch sketch;
    sketch.tap ("in", "a").resistor ("R1", "a", "b", 10e3).capacitor ("C1", "b", "0", 10e-9);
    StateSpaceBuilder builder (sketch.output ("b"), { "b" });
    auto network = builder.makeStateSpace();
    ASSERT_TRUE (builder.build (builder.knobs().values(), network));
    EXPECT_NEAR (network.a (0, 0), -1e4, 1e4 * tolerance::algebra);
    EXPECT_NEAR (network.b (0, 0), 1e4, 1e4 * tolerance::algebra);
    EXPECT_DOUBLE_EQ (network.bDot (0, 0), 0.0);
    EXPECT_DOUBLE_EQ (network.c (0, 0), 1.0);
    EXPECT_DOUBLE_EQ (network.d (0, 0), 0.0);
}

// Closed form: capacitors alone divide a step of the source as C1 / (C1 + C2).
TEST (StateSpaceBuilder, PutsCapacitiveDivisionIntoTheRateOfChange)
{
    NetlistSketch sketch;
    sketch.tap ("in", "a")
        .capacitor ("C1", "a", "t", 10e-9)
        .capacitor ("C2", "t", "0", 30e-9)
        .resistor ("R1", "t", "0", 1e5);
    StateSpaceBuilder builder (sketch.output ("t"), { "t" });
    auto network = builder.makeStateSpace();
    ASSERT_TRUE (builder.build (builder.knobs().values(), network));
    ASSERT_EQ (builder.stateCount(), 1);
    // The volts at t after the jump: with C1's as the state, u - x.
    const double jump = network.d (0, 0) + network.c (0, 0) * network.bDot (0, 0);
    EXPECT_NEAR (jump, 0.25, tolerance::algebra);
}

TEST (StateSpaceBuilder, NamesStatesAndLeavesDependentOnesOut)
{
    NetlistSketch sketch;
    OpAmp amplifier;
    amplifier.gainBandwidthHz = 1e6;
    sketch.tap ("in", "a").inductor ("L1", "a", "b", 1.0, 100.0, 1e-10).capacitor ("C1", "b", "0", 1e-8);
    sketch.capacitor ("C2", "0", "b", 1e-8).opAmp ("U1", "b", "o", "o", amplifier).resistor ("R1", "b", "0", 1e5);
    const StateSpaceBuilder builder (sketch.output ("o"), { "o" });
    ASSERT_FALSE (builder.fault()) << builder.fault().subject;
    EXPECT_EQ (stateNames (builder), (Names { "U1", "L1.self", "L1" }));
    EXPECT_EQ (builder.quantities().size(), 5U);
}

// By hand: stores minus loops of capacitors, cut-sets of coils and capacitors an op-amp forces.
TEST (StateSpaceBuilder, CountsIndependentStates)
{
    const std::map<std::string, int> expected {
        { "coil star", 3 },           { "capacitor loop", 2 },         { "parts in parallel", 3 },
        { "impedance converter", 2 }, { "resistor between coils", 1 }, { "capacitor at virtual earth", 1 }
    };
    std::size_t found = 0;
    for (const auto& sample : sampleNetworks())
    {
        const StateSpaceBuilder builder (sample.netlist, { sample.netlist.output });
        EXPECT_FALSE (builder.fault()) << sample.name << ": " << sentenceFor (builder.fault());
        const auto entry = expected.find (sample.name);
        if (entry == expected.end())
            continue;
        ++found;
        EXPECT_EQ (builder.stateCount(), entry->second) << sample.name;
    }
    EXPECT_EQ (found, expected.size());
}

TEST (StateSpaceBuilder, ReadsCommonAndUntouchedNodesAsZero)
{
    NetlistSketch sketch;
    sketch.tap ("in", "a")
        .resistor ("R1", "a", "b", 1e3)
        .capacitor ("C1", "b", "0", 1e-8)
        .contact ("S1", "b", "x", false);
    StateSpaceBuilder builder (sketch.output ("b"), { "0", "x" });
    auto network = builder.makeStateSpace();
    ASSERT_TRUE (builder.build (builder.knobs().values(), network));
    EXPECT_TRUE (network.c.isZero());
    EXPECT_TRUE (network.d.isZero());
}

TEST (StateSpaceBuilder, NamesTiedSources)
{
    NetlistSketch twice, shorted;
    twice.tap ("in", "a").tap ("in2", "b").contact ("S1", "a", "b", true).resistor ("R1", "b", "0", 1e3);
    EXPECT_EQ (faultOf (twice.output ("b")).kind, Kind::sourceTied);
    EXPECT_EQ (faultOf (twice.output ("b")).subject, "in2");
    EXPECT_EQ (faultOf (twice.output ("b")).others, Names { "in" });
    shorted.tap ("in", "a")
        .contact ("S1", "a", "0", true)
        .resistor ("R1", "a", "b", 1e3)
        .resistor ("R2", "b", "0", 1e3);
    EXPECT_EQ (faultOf (shorted.output ("b")).others, Names { "0" });
}

TEST (StateSpaceBuilder, NamesTiedOpAmpOutputs)
{
    NetlistSketch sketch;
    sketch.tap ("in", "a").opAmp ("U1", "a", "b", "b").opAmp ("U2", "a", "b", "b").resistor ("R1", "b", "0", 1e3);
    EXPECT_EQ (faultOf (sketch.output ("b")).kind, Kind::outputTied);
    EXPECT_EQ (faultOf (sketch.output ("b")).subject, "U2");
}

TEST (StateSpaceBuilder, NamesTheOpAmpWithoutFeedback)
{
    NetlistSketch sketch;
    sketch.tap ("in", "a").resistor ("R1", "a", "b", 1e3).opAmp ("U7", "b", "0", "o").resistor ("R2", "o", "0", 1e3);
    EXPECT_EQ (faultOf (sketch.output ("o")).kind, Kind::opAmpWithoutFeedback);
    EXPECT_EQ (faultOf (sketch.output ("o")).subject, "U7");
}

TEST (StateSpaceBuilder, NamesFloatingNodes)
{
    NetlistSketch sketch;
    sketch.tap ("in", "a").resistor ("R1", "a", "0", 1e3).resistor ("R2", "x", "y", 1e3);
    const auto fault = faultOf (sketch.output ("a"));
    EXPECT_EQ (fault.kind, Kind::floating);
    EXPECT_EQ (fault.others, (Names { "x", "y" }));
}

// An ideal differentiator is refused at its own output and legal where an integrator follows.
TEST (StateSpaceBuilder, RefusesAnOutputThatFollowsTheRateOfChange)
{
    NetlistSketch sketch;
    sketch.tap ("in", "a").capacitor ("C1", "a", "m", 1e-8).resistor ("R1", "m", "o", 1e4).opAmp ("U1", "0", "m", "o");
    const auto fault = faultOf (sketch.output ("o"));
    EXPECT_EQ (fault.kind, Kind::outputFollowsRate);
    EXPECT_EQ (fault.subject, "o");
    EXPECT_FALSE (faultOf (sketch.resistor ("R2", "o", "x", 1e4).capacitor ("C2", "x", "0", 1e-8).output ("x")));
}

TEST (StateSpaceBuilder, RefusesTheRateOfChangeOfARateOfChange)
{
    NetlistSketch sketch;
    sketch.tap ("in", "a").capacitor ("C1", "a", "m", 1e-8).resistor ("R1", "m", "o", 1e4).opAmp ("U1", "0", "m", "o");
    sketch.capacitor ("C2", "o", "n", 1e-8).resistor ("R2", "n", "q", 1e4).opAmp ("U2", "0", "n", "q");
    const auto fault = faultOf (sketch.output ("q"));
    EXPECT_TRUE (fault);
    EXPECT_NE (sentenceFor (fault), "");
}

TEST (StateSpaceBuilder, SurvivesANetworkOfResistorsOnly)
{
    NetlistSketch sketch;
    sketch.tap ("in", "a", 1e3).resistor ("R1", "a", "0", 3e3);
    StateSpaceBuilder builder (sketch.output ("a"), { "a" });
    auto network = builder.makeStateSpace();
    ASSERT_TRUE (builder.build (builder.knobs().values(), network));
    EXPECT_NEAR (network.d (0, 0), 0.75, tolerance::algebra);
}

} // namespace stopwright

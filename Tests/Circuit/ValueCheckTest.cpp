// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingSearch.h"
#include "Circuit/NetlistSketch.h"

#include <gtest/gtest.h>
#include <limits>

namespace stopwright
{
namespace
{

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double notANumber = std::numeric_limits<double>::quiet_NaN();

/// A sound network with one more part across its output.
Netlist withPart (const PartValue& value)
{
    auto sketch = NetlistSketch().tap ("W1", "in").resistor ("R1", "in", "t", 47e3).resistor ("R2", "t", "0", 100e3);
    const std::vector<std::string> nodes { "t", "0", "t" };
    return sketch.part ("X1", { nodes.begin(), nodes.begin() + static_cast<std::ptrdiff_t> (leadCount (value)) }, value)
        .output ("t");
}

Netlist withOpAmp (const OpAmp& amplifier)
{
    return NetlistSketch().tap ("W1", "in", 1e3).opAmp ("X1", "in", "t", "t", amplifier).output ("t");
}

TEST (ValueCheck, RefusesZeroNegativeAbsurdAndNotANumber)
{
    for (const double ohms : { 0.0, -47e3, 1e13, 1e-4, infinity, notANumber })
        EXPECT_TRUE (refuses (withPart (Resistor { ohms }), "X1", { "The resistance of X1 is", "give it" })) << ohms;
    for (const double farads : { 0.0, -1e-9, 2.0, 1e-16, notANumber })
        EXPECT_TRUE (refuses (withPart (Capacitor { farads, infinity }), "X1", { "The capacitance of X1 is" }))
            << farads;
    for (const double henries : { 0.0, -1.0, 1e6, notANumber })
        EXPECT_TRUE (refuses (withPart (Inductor { henries, 0.0, 0.0 }), "X1", { "The inductance of X1 is" }))
            << henries;
    EXPECT_TRUE (isClean (withPart (Resistor { 47e3 })));
}

TEST (ValueCheck, RefusesBadLeaksWindingsAndSelfCapacitances)
{
    for (const double ohms : { 0.0, -1.0, 1e16, notANumber })
        EXPECT_TRUE (refuses (withPart (Capacitor { 1e-9, ohms }), "X1", { "leak resistance", "leave it out" }))
            << ohms;
    for (const double ohms : { -1.0, 1e10, infinity, notANumber })
        EXPECT_TRUE (refuses (withPart (Inductor { 1.0, ohms, 0.0 }), "X1", { "winding resistance" })) << ohms;
    for (const double farads : { -1e-12, 1e-16, 1.0, notANumber })
        EXPECT_TRUE (refuses (withPart (Inductor { 1.0, 1.0, farads }), "X1", { "self-capacitance", "0 for none" }))
            << farads;
    EXPECT_TRUE (isClean (withPart (Capacitor { 1e-9, infinity })));
    EXPECT_TRUE (isClean (withPart (Inductor { 1.0, 0.0, 0.0 })));
}

TEST (ValueCheck, RefusesBadPotentiometers)
{
    EXPECT_TRUE (refuses (withPart (Potentiometer { 0.0, 0.5, Taper::linear }), "X1", { "track resistance" }));
    for (const double position : { -0.1, 1.1, notANumber })
        EXPECT_TRUE (refuses (withPart (Potentiometer { 1e5, position, Taper::log }), "X1", { "position" }))
            << position;
}

TEST (ValueCheck, RefusesBadOpAmps)
{
    OpAmp amplifier;
    amplifier.gainBandwidthHz = 0.0;
    EXPECT_TRUE (refuses (withOpAmp (amplifier), "X1", { "gain-bandwidth product" }));
    amplifier.gainBandwidthHz = 1e6;
    amplifier.openLoopDb = 300.0;
    EXPECT_TRUE (refuses (withOpAmp (amplifier), "X1", { "open-loop gain" }));
    amplifier.openLoopDb = 100.0;
    amplifier.rails = { 15.0, -15.0 };
    EXPECT_TRUE (refuses (withOpAmp (amplifier), "X1", { "rails from 15.0 V to -15.0 V", "lower one first" }));
    amplifier.rails = { -15.0, notANumber };
    EXPECT_TRUE (refuses (withOpAmp (amplifier), "X1", { "rail" }));
    amplifier.rails = { -15.0, 15.0 };
    EXPECT_TRUE (isClean (withOpAmp (amplifier)));
}

TEST (ValueCheck, RefusesBadSourcesAndTolerances)
{
    for (const double ohms : { -1.0, 1e-4, 1e13, notANumber })
        EXPECT_TRUE (refuses (NetlistSketch().tap ("W1", "t", ohms).resistor ("R1", "t", "0", 1e3).output ("t"), "W1",
                              { "source resistance" }))
            << ohms;
    auto netlist = withPart (Resistor { 1e3 });
    for (const double tolerance : { -0.1, 1.0, notANumber })
    {
        netlist.parts.back().tolerance = tolerance;
        EXPECT_TRUE (refuses (netlist, "X1", { "tolerance" })) << tolerance;
    }
}

TEST (ValueCheck, JudgesEveryPart)
{
    const auto netlist =
        NetlistSketch().tap ("W1", "t").resistor ("R1", "t", "0", 0.0).capacitor ("C1", "t", "0", -1.0).output ("t");
    EXPECT_EQ (findFaults (netlist).size(), 2U);
}

} // namespace
} // namespace stopwright

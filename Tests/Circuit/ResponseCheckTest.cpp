// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingSearch.h"
#include "Circuit/NetlistSketch.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (ResponseCheck, WarnsOfTapsThatDoNotReachTheOutput)
{
    const auto apart = NetlistSketch()
                           .tap ("W1", "a", 1e3)
                           .resistor ("R1", "a", "0", 1e3)
                           .tap ("W2", "t", 1e3)
                           .resistor ("R2", "t", "0", 1e3)
                           .output ("t");
    EXPECT_TRUE (warns (apart, "W1", { "Nothing from tap W1 reaches the output node \"t\"" }));
    EXPECT_EQ (findFaults (apart).size(), 1U);
}

TEST (ResponseCheck, WarnsOfSilence)
{
    EXPECT_TRUE (warns (NetlistSketch().resistor ("R1", "t", "0", 1e3).output ("t"), "t", { "no tap" }));
    EXPECT_TRUE (warns (
        NetlistSketch().tap ("W1", "in").resistor ("R1", "in", "t", 1e3).contact ("S1", "t", "0", true).output ("t"),
        "t", { "shorted to common", "switch" }));
}

Netlist differentiator (double seriesOhms, const OpAmp& amplifier)
{
    NetlistSketch sketch;
    sketch.tap ("W1", "in")
        .capacitor ("C1", "in", "a", 10e-9)
        .resistor ("R2", "m", "t", 10e3)
        .opAmp ("U1", "0", "m", "t", amplifier);
    if (seriesOhms > 0.0)
        sketch.resistor ("R1", "a", "m", seriesOhms);
    else
        sketch.contact ("S1", "a", "m", true);
    return sketch.output ("t");
}

TEST (ResponseCheck, RefusesAnIdealDifferentiator)
{
    OpAmp slow;
    slow.gainBandwidthHz = 1e6;
    EXPECT_TRUE (refuses (differentiator (0.0, {}), "U1", { "rate of change of tap W1", "U1", "resistor in series" }));
    EXPECT_TRUE (refuses (NetlistSketch()
                              .tap ("W1", "in")
                              .resistor ("R1", "in", "m", 1e3)
                              .inductor ("L1", "m", "t", 1.0)
                              .opAmp ("U1", "0", "m", "t")
                              .output ("t"),
                          "U1", { "rate of change of tap W1", "across the coil" }));
    EXPECT_TRUE (isAccepted (differentiator (470.0, {})));
    EXPECT_TRUE (isAccepted (differentiator (0.0, slow)));
}

TEST (ResponseCheck, AcceptsHighPasses)
{
    EXPECT_TRUE (isClean (NetlistSketch()
                              .tap ("W1", "in")
                              .capacitor ("C1", "in", "a", 1e-9)
                              .resistor ("R1", "a", "0", 1e3)
                              .capacitor ("C2", "a", "t", 1e-9)
                              .resistor ("R2", "t", "0", 1e3)
                              .output ("t")));
}

} // namespace
} // namespace stopwright

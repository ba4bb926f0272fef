// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingSearch.h"
#include "Circuit/NetlistSketch.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

NetlistSketch openLoop (const OpAmp& amplifier)
{
    return NetlistSketch()
        .tap ("W1", "in", 1e3)
        .resistor ("R1", "in", "0", 47e3)
        .opAmp ("U1", "in", "m", "t", amplifier)
        .resistor ("R2", "m", "0", 1e3)
        .resistor ("R3", "t", "0", 10e3);
}

TEST (FeedbackCheck, RefusesOpAmpsWithoutFeedback)
{
    OpAmp slow;
    slow.gainBandwidthHz = 1e6;
    EXPECT_TRUE (refuses (openLoop ({}).output ("t"), "U1", { "U1 has no path from its output", "minus input" }));
    EXPECT_TRUE (refuses (openLoop (slow).output ("t"), "U1", { "U1 has no path" }));
    EXPECT_TRUE (isClean (openLoop ({}).resistor ("R4", "t", "m", 10e3).output ("t")));
}

TEST (FeedbackCheck, WarnsOfAFiniteGainWithoutFeedback)
{
    OpAmp weak;
    weak.openLoopDb = 20.0;
    EXPECT_TRUE (warns (openLoop (weak).output ("t"), "U1", { "open-loop gain of 20.0 dB" }));
}

TEST (FeedbackCheck, AnIdealTapEndsTheWayBack)
{
    const auto netlist = NetlistSketch()
                             .tap ("W1", "in")
                             .resistor ("R1", "in", "p", 1e3)
                             .resistor ("R2", "p", "0", 1e3)
                             .resistor ("R3", "t", "in", 1e3)
                             .opAmp ("U1", "p", "in", "t")
                             .output ("t");
    EXPECT_TRUE (refuses (netlist, "U1", { "U1 has no path" }));
}

TEST (FeedbackCheck, TheWayBackMayLeadThroughAnotherOpAmp)
{
    // An inverter in the loop of U1, which therefore is fed back to its plus input.
    const auto netlist = NetlistSketch()
                             .tap ("W1", "in")
                             .resistor ("R1", "in", "p", 10e3)
                             .resistor ("R2", "i", "p", 10e3)
                             .opAmp ("U1", "p", "0", "t")
                             .resistor ("R3", "t", "m", 10e3)
                             .resistor ("R4", "m", "i", 10e3)
                             .opAmp ("U2", "0", "m", "i")
                             .output ("t");
    EXPECT_TRUE (isClean (netlist));
}

TEST (FeedbackCheck, WarnsOfIntegratorsWithoutFeedbackAtRest)
{
    const auto integrator = [] (double leakOhms)
    {
        return NetlistSketch()
            .tap ("W1", "in")
            .resistor ("R1", "in", "m", 10e3)
            .part ("C1", { "m", "t" }, Capacitor { 10e-9, leakOhms })
            .opAmp ("U1", "0", "m", "t")
            .output ("t");
    };
    EXPECT_TRUE (warns (integrator (std::numeric_limits<double>::infinity()), "U1", { "U1 has no feedback at 0 Hz" }));
    EXPECT_TRUE (isClean (integrator (1e9)));
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingSearch.h"
#include "Circuit/NetlistSketch.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

NetlistSketch divider()
{
    return NetlistSketch().tap ("W1", "in").resistor ("R1", "in", "t", 47e3).resistor ("R2", "t", "0", 100e3);
}

TEST (ConnectionCheck, RefusesPartsWithAllLeadsOnOneNode)
{
    EXPECT_TRUE (
        refuses (divider().resistor ("R3", "t", "t", 1e3).output ("t"), "R3", { "R3 has both ends on node \"t\"" }));
    EXPECT_TRUE (
        refuses (divider().capacitor ("C1", "0", "0", 1e-9).output ("t"), "C1", { "both ends on circuit common" }));
    EXPECT_TRUE (refuses (divider().potentiometer ("P1", "t", "t", "t", { 1e5, 0.5, Taper::linear }).output ("t"), "P1",
                          { "all three" }));
}

TEST (ConnectionCheck, AcceptsPartsShortedByAClosedSwitchAndPartsInParallel)
{
    EXPECT_TRUE (isClean (divider().contact ("S1", "in", "t", true).output ("t")));
    EXPECT_TRUE (isClean (divider()
                              .resistor ("R3", "t", "0", 1e3)
                              .capacitor ("C1", "t", "0", 1e-9)
                              .capacitor ("C2", "0", "t", 1e-9)
                              .output ("t")));
    EXPECT_TRUE (isClean (divider().potentiometer ("P1", "t", "t", "0", { 1e5, 0.5, Taper::linear }).output ("t")));
}

TEST (ConnectionCheck, RefusesOutputsAndTapsThatTouchNothing)
{
    EXPECT_TRUE (refuses (divider().output ("x"), "x", { "output node \"x\"", "No part" }));
    EXPECT_TRUE (refuses (divider().tap ("W2", "x").output ("t"), "W2", { "Tap W2", "node \"x\"", "no part touches" }));
    EXPECT_TRUE (isClean (NetlistSketch().tap ("W1", "t").output ("t")));
    EXPECT_TRUE (isClean (NetlistSketch().tap ("W1", "t", 1e3).tap ("W2", "t", 1e3).output ("t")));
}

TEST (ConnectionCheck, WarnsOfAnOutputAtCommon)
{
    EXPECT_TRUE (warns (divider().output ("0"), "0", { "output is circuit common" }));
}

TEST (ConnectionCheck, RefusesIslands)
{
    const auto netlist = divider().resistor ("R3", "x", "y", 1e3).capacitor ("C1", "x", "y", 1e-9).output ("t");
    EXPECT_TRUE (refuses (netlist, "x", { "Nodes \"x\" and \"y\"", "R3 and C1", "no path to common" }));
    EXPECT_EQ (findFaults (netlist).size(), 1U);
}

TEST (ConnectionCheck, RefusesWhatAnOpenSwitchCutsOff)
{
    const auto cut = [] (bool closed)
    {
        return divider()
            .contact ("S1", "t", "u", closed)
            .resistor ("R3", "u", "v", 1e3)
            .capacitor ("C1", "u", "v", 1e-9)
            .output ("t");
    };
    EXPECT_TRUE (refuses (cut (false), "u", { "\"u\" and \"v\"", "while S1 is open" }));
    EXPECT_TRUE (isAccepted (cut (true)));
    EXPECT_TRUE (
        refuses (divider().contact ("S1", "t", "u", false).output ("t"), "u", { "open contact of S1", "node \"u\"" }));
}

TEST (ConnectionCheck, RefusesNodesThatOnlyOpAmpInputsTouch)
{
    const auto netlist = divider().opAmp ("U1", "x", "o", "o").output ("t");
    EXPECT_TRUE (refuses (netlist, "x", { "Only the input of U1", "node \"x\"" }));
}

TEST (ConnectionCheck, WarnsOfLeadsThatGoNowhere)
{
    EXPECT_TRUE (warns (divider().resistor ("R3", "t", "x", 1e3).output ("t"), "R3",
                        { "Only R3 touches node \"x\"", "\"0\" if common" }));
    EXPECT_TRUE (isClean (divider().resistor ("R3", "t", "x", 1e3).output ("x")));
    EXPECT_TRUE (isClean (divider().resistor ("R3", "t", "x", 1e3).contact ("S1", "x", "0", false).output ("t")));
}

TEST (ConnectionCheck, WarnsOfNodesThatOnlyCapacitorsHold)
{
    const auto held = [] (double leakOhms)
    {
        return NetlistSketch()
            .tap ("W1", "in")
            .capacitor ("C1", "in", "t", 1e-9)
            .part ("C2", { "t", "0" }, Capacitor { 1e-9, leakOhms })
            .output ("t");
    };
    EXPECT_TRUE (
        warns (held (std::numeric_limits<double>::infinity()), "t", { "Node \"t\"", "through capacitors only" }));
    EXPECT_TRUE (isClean (held (1e9)));
}

} // namespace
} // namespace stopwright

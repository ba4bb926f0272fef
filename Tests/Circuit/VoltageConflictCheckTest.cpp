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

TEST (VoltageConflictCheck, RefusesTwoIdealTapsOnOneNode)
{
    EXPECT_TRUE (refuses (divider().tap ("W2", "in").output ("t"), "W2",
                          { "Tap W1 and tap W2", "node \"in\"", "source resistance" }));
    EXPECT_TRUE (isClean (divider().tap ("W2", "in", 1e3).resistor ("R3", "in", "0", 1e3).output ("in")) == false);
    EXPECT_TRUE (refuses (divider().tap ("W2", "x").contact ("S1", "in", "x", true).output ("t"), "W2",
                          { "W1", "W2", "through closed S1" }));
    EXPECT_TRUE (isAccepted (divider().tap ("W2", "x").contact ("S1", "in", "x", false).output ("t")));
}

TEST (VoltageConflictCheck, RefusesIdealTapsOnCommon)
{
    EXPECT_TRUE (refuses (divider().tap ("W2", "0").output ("t"), "W2", { "Tap W2 is tied to circuit common" }));
    EXPECT_TRUE (refuses (divider().contact ("S1", "in", "0", true).output ("t"), "W1",
                          { "Tap W1 is shorted to common", "S1", "open the switch" }));
    EXPECT_TRUE (warns (divider().tap ("W2", "0", 1e3).output ("t"), "W2", { "Tap W2 feeds circuit common" }));
}

TEST (VoltageConflictCheck, RefusesOutputsOfOpAmpsThatMeetAnother)
{
    const auto follower = [] (const std::string& out)
    { return divider().opAmp ("U1", "t", "o", "o").contact ("S1", "o", out, true); };
    EXPECT_TRUE (isClean (follower ("p").output ("p")));
    EXPECT_TRUE (refuses (follower ("in").output ("t"), "U1", { "Tap W1 and the output of U1", "S1" }));
    EXPECT_TRUE (refuses (follower ("0").output ("t"), "U1", { "output of U1 is shorted to common", "S1" }));
    EXPECT_TRUE (refuses (follower ("p").opAmp ("U2", "t", "p", "p").output ("t"), "U2",
                          { "output of U1 and the output of U2" }));
    EXPECT_TRUE (refuses (divider().opAmp ("U1", "t", "in", "0").output ("t"), "U1",
                          { "output of U1 is tied to circuit common" }));
}

TEST (VoltageConflictCheck, RefusesOpAmpsWithInputsTogether)
{
    EXPECT_TRUE (refuses (divider().opAmp ("U1", "t", "t", "o").resistor ("R3", "o", "t", 1e3).output ("t"), "U1",
                          { "Both inputs of U1" }));
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingPlace.h"

#include "Circuit/NetlistSketch.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

FindingPlace firstPlace (const Netlist& netlist)
{
    const auto findings = findFaults (netlist);
    return findings.empty() ? FindingPlace { FindingPlace::Kind::network, "clean" }
                            : findingPlace (findings.front(), netlist);
}

} // namespace

TEST (FindingPlace, IsThePartThatIsWrong)
{
    const auto place = firstPlace (NetlistSketch()
                                       .tap ("W1", "in")
                                       .resistor ("R1", "in", "0", 1e3)
                                       .resistor ("R2", "in", "0", -1.0)
                                       .output ("in"));
    EXPECT_EQ (place, (FindingPlace { FindingPlace::Kind::part, "R2" }));
}

TEST (FindingPlace, IsTheTapThatFeedsNothing)
{
    const auto place = firstPlace (
        NetlistSketch().tap ("W1", "in", 1e3).tap ("W2", "far").resistor ("R1", "in", "0", 1e3).output ("in"));
    EXPECT_EQ (place, (FindingPlace { FindingPlace::Kind::tap, "W2" }));
}

TEST (FindingPlace, IsTheNodeThatFloats)
{
    const auto place = firstPlace (NetlistSketch()
                                       .tap ("W1", "in", 1e3)
                                       .resistor ("R1", "in", "0", 1e3)
                                       .resistor ("R2", "f", "g", 1e3)
                                       .output ("in"));
    EXPECT_EQ (place, (FindingPlace { FindingPlace::Kind::node, "f" }));
}

TEST (FindingPlace, IsTheNetworkWhereNothingIsNamed)
{
    const auto place = firstPlace (NetlistSketch().tap ("W1", "in").resistor ("R1", "in", "0", 1e3).output (""));
    EXPECT_EQ (place, FindingPlace {});
}

} // namespace stopwright

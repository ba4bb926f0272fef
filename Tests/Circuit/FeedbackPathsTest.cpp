// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FeedbackPaths.h"

#include "Circuit/NetlistSketch.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

/// Part 0 is the op-amp that is asked about.
NetlistSketch stage()
{
    return NetlistSketch().opAmp ("U1", "p", "m", "o").resistor ("R1", "o", "a", 1e3);
}

TEST (FeedbackPaths, LeadThroughPartsAndStopAtCommonAndIdealTaps)
{
    const auto ask = [] (const Netlist& netlist)
    { return FeedbackPaths (netlist, NodeMap (netlist), PathKind::any).reachesMinus (netlist.parts[0]); };
    EXPECT_TRUE (ask (stage().resistor ("R2", "a", "m", 1e3).output ("o")));
    EXPECT_FALSE (ask (stage().resistor ("R2", "a", "0", 1e3).resistor ("R3", "0", "m", 1e3).output ("o")));
    EXPECT_FALSE (ask (stage().tap ("W1", "a").resistor ("R2", "a", "m", 1e3).output ("o")));
    EXPECT_TRUE (ask (stage().tap ("W1", "a", 50.0).resistor ("R2", "a", "m", 1e3).output ("o")));
}

TEST (FeedbackPaths, LeadThroughOtherOpAmpsByTheirInputsOnly)
{
    const auto ask = [] (const std::string& in, const std::string& out)
    {
        const auto netlist = stage()
                                 .opAmp ("U2", in, "x", out)
                                 .resistor ("R2", "y", "m", 1e3)
                                 .resistor ("R3", "x", "0", 1e3)
                                 .output ("o");
        return FeedbackPaths (netlist, NodeMap (netlist), PathKind::any).reachesMinus (netlist.parts[0]);
    };
    EXPECT_TRUE (ask ("a", "y"));
    EXPECT_FALSE (ask ("y", "a"));
}

TEST (FeedbackPaths, CapacitorsEndThemAtRest)
{
    const auto netlist = stage().capacitor ("C1", "a", "m", 1e-9).resistor ("R2", "a", "p", 1e3).output ("o");
    const NodeMap nodes (netlist);
    EXPECT_FALSE (FeedbackPaths (netlist, nodes, PathKind::direct).reachesMinus (netlist.parts[0]));
    EXPECT_TRUE (FeedbackPaths (netlist, nodes, PathKind::direct).reachesPlus (netlist.parts[0]));
    EXPECT_TRUE (FeedbackPaths (netlist, nodes, PathKind::any).reachesMinus (netlist.parts[0]));
}

} // namespace
} // namespace stopwright

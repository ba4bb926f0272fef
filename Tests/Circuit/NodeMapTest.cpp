// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NodeMap.h"

#include "Circuit/NetlistSketch.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (NodeMap, NumbersNodesInOrderOfAppearance)
{
    const NodeMap nodes (
        NetlistSketch().tap ("W1", "in").resistor ("R1", "in", "t", 1e3).resistor ("R2", "u", "0", 1e3).output ("t"));
    EXPECT_EQ (nodes.count(), 3);
    EXPECT_EQ (nodes.find ("in"), 0);
    EXPECT_EQ (nodes.find ("t"), 1);
    EXPECT_EQ (nodes.find ("u"), 2);
    EXPECT_EQ (nodes.find ("0"), NodeMap::common);
    EXPECT_EQ (nodes.find ("x"), NodeMap::unknown);
    EXPECT_EQ (nodes.nameOf (1), "t");
    EXPECT_EQ (nodes.nameOf (NodeMap::common), "0");
}

TEST (NodeMap, ClosedSwitchesMergeAndOpenOnesDoNot)
{
    const NodeMap nodes (NetlistSketch()
                             .contact ("S1", "a", "b", true)
                             .contact ("S2", "c", "d", false)
                             .contact ("S3", "b", "e", true)
                             .contact ("S4", "f", "0", true)
                             .output ("d"));
    EXPECT_EQ (nodes.find ("a"), nodes.find ("b"));
    EXPECT_EQ (nodes.find ("a"), nodes.find ("e"));
    EXPECT_NE (nodes.find ("c"), nodes.find ("d"));
    EXPECT_EQ (nodes.find ("f"), NodeMap::common);
    EXPECT_EQ (nodes.members (nodes.find ("e")), (std::vector<std::string> { "a", "b", "e" }));
    EXPECT_EQ (nodes.count(), 3);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NodeIslands.h"

#include "Circuit/NetlistSketch.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

using Islands = std::vector<std::vector<int>>;

TEST (NodeIslands, CapacitorsJoinForSignalsAndNotAtRest)
{
    const auto netlist = NetlistSketch()
                             .tap ("W1", "a", 1e3)
                             .capacitor ("C1", "a", "b", 1e-9)
                             .resistor ("R1", "b", "c", 1e3)
                             .part ("C2", { "a", "d" }, Capacitor { 1e-9, 1e6 })
                             .output ("c");
    const NodeMap nodes (netlist);
    EXPECT_EQ (nodeIslands (netlist, nodes, PathKind::any), Islands {});
    EXPECT_EQ (nodeIslands (netlist, nodes, PathKind::direct), (Islands { { 1, 2 } }));
}

TEST (NodeIslands, OpAmpOutputsAreTiedToCommonAndInputsAreNot)
{
    const auto netlist = NetlistSketch().opAmp ("U1", "p", "m", "o").resistor ("R1", "m", "o", 1e3).output ("o");
    EXPECT_EQ (nodeIslands (netlist, NodeMap (netlist), PathKind::any), (Islands { { 0 } }));
}

} // namespace
} // namespace stopwright

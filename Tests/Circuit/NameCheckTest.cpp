// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/CircuitLimits.h"
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

TEST (NameCheck, SoundNetworkHasNoFindings)
{
    EXPECT_TRUE (isClean (divider().output ("t")));
}

TEST (NameCheck, RefusesRepeatedNames)
{
    EXPECT_TRUE (refuses (divider().resistor ("R1", "t", "0", 1e3).output ("t"), "R1",
                          { "Two parts are called R1", "give each" }));
    EXPECT_TRUE (refuses (divider().tap ("W1", "t", 1e3).output ("t"), "W1", { "Two taps are called W1" }));
    EXPECT_TRUE (
        refuses (divider().resistor ("W1", "t", "0", 1e3).output ("t"), "W1", { "A tap and a part are called W1" }));
}

TEST (NameCheck, RefusesMissingNames)
{
    EXPECT_TRUE (
        refuses (divider().capacitor ("", "t", "0", 1e-9).output ("t"), "", { "Part 3 (a capacitor) has no name" }));
    EXPECT_TRUE (refuses (divider().tap ("", "t", 1e3).output ("t"), "", { "Tap 2 has no name" }));
    EXPECT_TRUE (refuses (divider().output (""), "", { "no output" }));
    EXPECT_TRUE (refuses (divider().resistor ("R3", "t", "", 1e3).output ("t"), "R3",
                          { "R3 has a lead whose node has no name" }));
    EXPECT_TRUE (refuses (divider().tap ("W2", "", 1e3).output ("t"), "W2", { "Tap W2 feeds no node" }));
}

TEST (NameCheck, RefusesWrongNumbersOfNodes)
{
    EXPECT_TRUE (refuses (divider().part ("R3", { "t" }, Resistor { 1e3 }).output ("t"), "R3",
                          { "R3 is a resistor", "needs 2 nodes", "has 1" }));
    EXPECT_TRUE (refuses (divider().part ("U1", { "t", "0" }, OpAmp {}).output ("t"), "U1",
                          { "U1 is an op-amp", "needs 3 nodes" }));
    EXPECT_TRUE (refuses (divider().part ("L1", {}, Inductor { 1.0, 0.0, 0.0 }).output ("t"), "L1",
                          { "L1 is an inductor", "needs 2 nodes" }));
}

TEST (NameCheck, RefusesWhatIsTooLarge)
{
    auto wide = divider();
    auto stores = divider();
    auto parts = divider();
    auto taps = divider();
    for (std::size_t k = 0; k < CircuitLimits::nodes; ++k)
        wide.resistor (numbered ("RW", k), "t", numbered ("n", k), 1e3);
    for (std::size_t k = 0; k <= CircuitLimits::states; ++k)
        stores.capacitor (numbered ("C", k), "t", "0", 1e-9);
    for (std::size_t k = 0; k < CircuitLimits::parts; ++k)
        parts.resistor (numbered ("RP", k), "t", "0", 1e6);
    for (std::size_t k = 0; k < CircuitLimits::sources; ++k)
        taps.tap (numbered ("V", k), "t", 1e6);
    EXPECT_TRUE (refuses (wide.output ("t"), "", { "66 nodes", "at most 64" }));
    EXPECT_TRUE (refuses (stores.output ("t"), "", { "25 energy stores", "at most 24" }));
    EXPECT_TRUE (refuses (parts.output ("t"), "", { "258 parts", "at most 256" }));
    EXPECT_TRUE (refuses (taps.output ("t"), "", { "9 taps", "at most 8" }));
}

TEST (NameCheck, CountsSelfCapacitanceAndBandwidthAsStores)
{
    OpAmp slow;
    slow.gainBandwidthHz = 1e6;
    auto network = divider();
    for (std::size_t k = 0; k < 11; ++k)
        network.inductor (numbered ("L", k), "t", "0", 1.0, 100.0, 1e-10);
    network.opAmp ("U1", "t", "o1", "o1", slow).opAmp ("U2", "t", "o2", "o2", slow);
    EXPECT_TRUE (isAccepted (network.output ("t")));
    EXPECT_TRUE (refuses (network.capacitor ("C1", "t", "0", 1e-9).output ("t"), "", { "25 energy stores" }));
}

TEST (NameCheck, OddNamesAreShownSafely)
{
    const auto netlist = divider().resistor ("R\n3", "t", "t", 1e3).output ("t");
    EXPECT_TRUE (refuses (netlist, "R\n3", { "\"R?3\" has both ends" }));
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingSearch.h"
#include "Circuit/NetlistSketch.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

/// Two ideal op-amps that force the same pair of nodes together; every one has a way back.
Netlist rivals (double extraOhms)
{
    NetlistSketch sketch;
    sketch.tap ("W1", "in")
        .opAmp ("U1", "in", "m", "o1")
        .opAmp ("U2", "in", "m", "o2")
        .resistor ("R1", "o1", "m", 10e3)
        .resistor ("R2", "o2", "m", 10e3)
        .resistor ("R3", "m", "0", 10e3);
    if (extraOhms > 0.0)
        sketch.resistor ("R4", "o1", "o2", extraOhms);
    return sketch.output ("o1");
}

TEST (SingularityCheck, RefusesTwoOpAmpsThatDoTheSame)
{
    EXPECT_TRUE (refuses (rivals (0.0), "U1", { "\"o1\" and \"o2\"", "U1 and U2" }));
    EXPECT_TRUE (refuses (rivals (1e3), "U1", { "\"o1\" and \"o2\"", "U1 and U2" }));
}

TEST (SingularityCheck, RefusesFeedbackThatCancelsOut)
{
    // A current pump in balance, R2/R1 = R4/R3, drives its load node from an infinite impedance; nothing loads it.
    const auto pump = [] (double loadOhms)
    {
        NetlistSketch sketch;
        sketch.tap ("W1", "in")
            .resistor ("R1", "m", "0", 10e3)
            .resistor ("R2", "m", "o", 20e3)
            .resistor ("R3", "in", "p", 22e3)
            .resistor ("R4", "p", "o", 44e3)
            .opAmp ("U1", "p", "m", "o");
        if (loadOhms > 0.0)
            sketch.resistor ("R5", "p", "0", loadOhms);
        return sketch.output ("p");
    };
    EXPECT_TRUE (refuses (pump (0.0), "U1", { "Nothing decides the voltage", "\"p\"", "U1" }));
    EXPECT_TRUE (isAccepted (pump (4.7e3)));
}

TEST (SingularityCheck, AcceptsDegenerateNetworksThatHaveASolution)
{
    // Capacitor loop with a capacitor across an ideal tap; cut-set of coils; ideal integrators in a row.
    EXPECT_TRUE (isClean (NetlistSketch()
                              .tap ("W1", "in")
                              .capacitor ("C0", "in", "0", 1e-9)
                              .capacitor ("C1", "in", "t", 1e-9)
                              .capacitor ("C2", "t", "0", 1e-9)
                              .resistor ("R1", "t", "0", 1e6)
                              .output ("t")));
    EXPECT_TRUE (isClean (NetlistSketch()
                              .tap ("W1", "in", 1e3)
                              .inductor ("L1", "in", "a", 1.0)
                              .inductor ("L2", "a", "t", 1.0)
                              .resistor ("R1", "t", "0", 1e4)
                              .output ("t")));
    EXPECT_TRUE (isClean (NetlistSketch().tap ("W1", "t").inductor ("L1", "t", "0", 1.0).output ("t")));
}

} // namespace
} // namespace stopwright

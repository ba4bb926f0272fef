// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingSearch.h"
#include "Circuit/NetlistSketch.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

/// Equal-value Sallen-Key low-pass; at a gain above 3 it oscillates at 1/(2 pi R C). Source: closed form.
Netlist sallenKey (double gain)
{
    return NetlistSketch()
        .tap ("W1", "in")
        .resistor ("R1", "in", "a", 15.915e3)
        .resistor ("R2", "a", "b", 15.915e3)
        .capacitor ("C1", "a", "out", 10e-9)
        .capacitor ("C2", "b", "0", 10e-9)
        .opAmp ("U1", "b", "m", "out")
        .resistor ("RA", "m", "0", 10e3)
        .resistor ("RB", "m", "out", (gain - 1.0) * 10e3)
        .output ("out");
}

TEST (StabilityCheck, RefusesOscillationWithItsFrequency)
{
    EXPECT_TRUE (isClean (sallenKey (2.9)));
    EXPECT_TRUE (refuses (sallenKey (3.001), "U1", { "oscillates by itself at 1.00 kHz", "U1" }));
}

Netlist inverter (bool swapped, const OpAmp& amplifier)
{
    return NetlistSketch()
        .tap ("W1", "in")
        .resistor ("R1", "in", "m", 10e3)
        .resistor ("R2", "m", "t", 22e3)
        .opAmp ("U1", swapped ? "m" : "0", swapped ? "0" : "m", "t", amplifier)
        .output ("t");
}

TEST (StabilityCheck, WarnsOfSwappedInputsOfAnIdealOpAmp)
{
    EXPECT_TRUE (isClean (inverter (false, {})));
    EXPECT_TRUE (warns (inverter (true, {}), "U1", { "U1", "swapped" }));
}

TEST (StabilityCheck, RefusesSwappedInputsOfARealOpAmp)
{
    OpAmp slow;
    slow.gainBandwidthHz = 1e6;
    EXPECT_TRUE (isClean (inverter (false, slow)));
    EXPECT_TRUE (refuses (inverter (true, slow), "U1", { "runs away by itself", "U1" }));
}

Netlist converter (bool swapFirst)
{
    NetlistSketch sketch;
    sketch.tap ("W1", "1", 10e3)
        .resistor ("Z1", "1", "2", 10e3)
        .resistor ("Z2", "2", "3", 10e3)
        .resistor ("Z3", "3", "4", 10e3)
        .capacitor ("Z4", "4", "5", 10e-9)
        .resistor ("Z5", "5", "0", 10e3);
    sketch.opAmp ("U1", swapFirst ? "3" : "1", swapFirst ? "1" : "3", "4").opAmp ("U2", "5", "3", "2");
    return sketch.output ("1");
}

TEST (StabilityCheck, AcceptsTwoAmplifierLoopsAndSeesASwapInThem)
{
    EXPECT_TRUE (isAccepted (converter (false)));
    EXPECT_TRUE (isClean (converter (false)));
    EXPECT_TRUE (warns (converter (true), "U1", { "U1", "swapped" }));
}

TEST (StabilityCheck, AcceptsTheUsualThreeAmplifierFilters)
{
    // State-variable filter: W. J. Kerwin, L. P. Huelsman, R. W. Newcomb, 1967.
    EXPECT_TRUE (isClean (NetlistSketch()
                              .tap ("W1", "in")
                              .resistor ("R1", "in", "p", 10e3)
                              .resistor ("R2", "p", "bp", 90e3)
                              .resistor ("R3", "lp", "m", 10e3)
                              .resistor ("R4", "m", "hp", 10e3)
                              .opAmp ("U1", "p", "m", "hp")
                              .resistor ("R5", "hp", "m2", 16e3)
                              .capacitor ("C1", "m2", "bp", 10e-9)
                              .opAmp ("U2", "0", "m2", "bp")
                              .resistor ("R6", "bp", "m3", 16e3)
                              .capacitor ("C2", "m3", "lp", 10e-9)
                              .opAmp ("U3", "0", "m3", "lp")
                              .output ("bp")));
    // Two integrators and an inverter: J. Tow, 1968; L. C. Thomas, 1971.
    EXPECT_TRUE (isClean (NetlistSketch()
                              .tap ("W1", "in")
                              .resistor ("R1", "in", "m1", 100e3)
                              .resistor ("R2", "m1", "bp", 100e3)
                              .capacitor ("C1", "m1", "bp", 10e-9)
                              .opAmp ("U1", "0", "m1", "bp")
                              .resistor ("R3", "bp", "m2", 16e3)
                              .capacitor ("C2", "m2", "lp", 10e-9)
                              .opAmp ("U2", "0", "m2", "lp")
                              .resistor ("R4", "lp", "m3", 10e3)
                              .resistor ("R5", "m3", "inv", 10e3)
                              .opAmp ("U3", "0", "m3", "inv")
                              .resistor ("R6", "inv", "m1", 16e3)
                              .output ("bp")));
}

TEST (StabilityCheck, AcceptsAFrequencyDependentNegativeResistance)
{
    NetlistSketch sketch;
    sketch.tap ("W1", "1", 10e3)
        .capacitor ("Z1", "1", "2", 10e-9)
        .resistor ("Z2", "2", "3", 10e3)
        .resistor ("Z3", "3", "4", 10e3)
        .resistor ("Z4", "4", "5", 10e3)
        .capacitor ("Z5", "5", "0", 10e-9)
        .resistor ("R1", "5", "0", 1e6);
    EXPECT_TRUE (isAccepted (sketch.opAmp ("U1", "1", "3", "4").opAmp ("U2", "5", "3", "2").output ("1")));
}

TEST (StabilityCheck, AcceptsLosslessResonators)
{
    EXPECT_TRUE (isAccepted (NetlistSketch()
                                 .tap ("W1", "in")
                                 .inductor ("L1", "in", "a", 1.0)
                                 .capacitor ("C1", "a", "b", 22e-9)
                                 .inductor ("L2", "b", "t", 0.1)
                                 .capacitor ("C2", "t", "0", 1e-9)
                                 .output ("t")));
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/DeviceCheck.h"

#include "Circuit/DeviceNetworks.h"
#include "Circuit/FindingSearch.h"
#include "Circuit/LinearCircuit.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

NetlistSketch supplied (double seriesOhms = 0.0)
{
    return NetlistSketch()
        .tap ("W1", "in")
        .part ("V1", { "+", "0" }, Supply { 15.0, seriesOhms })
        .resistor ("R1", "in", "t", 10e3)
        .resistor ("R2", "+", "t", 10e3);
}

} // namespace

TEST (DeviceCheck, SoundNetworksAreClean)
{
    EXPECT_TRUE (isClean (supplied().output ("t")));
    EXPECT_TRUE (isClean (clipper (1e3, 10e-9).output ("out")));
    EXPECT_TRUE (isClean (emitterFollower (10e-6).output ("out")));
    EXPECT_TRUE (isClean (commonEmitter (silicon()).output ("out")));
}

TEST (DeviceCheck, RefusesSuppliesAtOdds)
{
    const Supply nine { 9.0, 0.0 };
    EXPECT_TRUE (refuses (supplied().part ("V2", { "+", "0" }, nine).output ("t"), "V2",
                          { "Supply V2", "node \"+\"", "supply V1 lays down already", "series resistance" }));
    EXPECT_TRUE (isClean (supplied (10.0).part ("V2", { "+", "0" }, nine).output ("t")));
    EXPECT_TRUE (refuses (supplied().part ("V2", { "x", "+" }, nine).part ("V3", { "x", "0" }, nine).output ("t"), "V3",
                          { "supply V2 and supply V1 lay down already" }));
    EXPECT_TRUE (refuses (supplied().part ("V2", { "in", "0" }, nine).output ("t"), "V2", { "tap W1 lays down" }));
    EXPECT_TRUE (refuses (supplied().part ("V2", { "in", "+" }, nine).output ("t"), "V2", { "tap W1", "supply V1" }));
    EXPECT_TRUE (refuses (supplied().opAmp ("U1", "t", "o", "o").part ("V2", { "o", "0" }, nine).output ("t"), "V2",
                          { "the output of U1" }));
}

TEST (DeviceCheck, RefusesShortedSupplies)
{
    EXPECT_TRUE (refuses (supplied().contact ("S1", "+", "0", true).output ("t"), "V1", { "Supply V1", "shorts" }));
    EXPECT_TRUE (isClean (supplied().contact ("S1", "+", "0", false).output ("t")));
}

TEST (DeviceCheck, WarnsOfABaseWithoutBias)
{
    const auto stage = [] (double biasOhms)
    {
        auto sketch = supplied()
                          .capacitor ("C1", "t", "b", 1e-6)
                          .part ("Q1", { "+", "b", "e" }, Npn { silicon() })
                          .resistor ("RE", "e", "0", 10e3);
        if (biasOhms > 0.0)
            sketch.resistor ("RB", "+", "b", biasOhms);
        return sketch.output ("e");
    };
    EXPECT_TRUE (warns (stage (0.0), "Q1", { "base of Q1", "node \"b\"", "resistor for its bias" }));
    EXPECT_TRUE (isClean (stage (1e6)));
}

TEST (DeviceCheck, RefusesFloatingGroups)
{
    EXPECT_TRUE (
        refuses (supplied().part ("D1", { "x", "y" }, signalDiode()).resistor ("R3", "x", "y", 1e3).output ("t"), "x",
                 { "no path to common" }));
    EXPECT_TRUE (refuses (supplied().part ("D1", { "t", "t" }, signalDiode()).output ("t"), "D1", { "both ends" }));
}

TEST (DeviceCheck, RefusesValuesOutOfRange)
{
    Transistor weak = silicon();
    weak.forwardBeta = 0.0;
    EXPECT_TRUE (refuses (commonEmitter (weak).output ("out"), "Q1", { "forward current gain of Q1" }));
    EXPECT_TRUE (refuses (supplied().part ("D1", { "t", "0" }, Diode { 0.0, 1.0, 0.0 }).output ("t"), "D1",
                          { "saturation current of D1" }));
    EXPECT_TRUE (
        refuses (supplied().part ("V2", { "x", "t" }, Supply { 1e6, 1.0 }).output ("t"), "V2", { "voltage of V2" }));
    EXPECT_TRUE (refuses (supplied().part ("Q1", { "t", "0" }, Npn { silicon() }).output ("t"), "Q1",
                          { "an npn transistor and needs 3 nodes" }));
}

TEST (DeviceCheck, RefusesMoreJunctionsThanFit)
{
    auto sketch = supplied();
    for (std::size_t k = 0; k < 9; ++k)
        sketch.part (numbered ("Q", k), { "+", "t", "0" }, Npn { silicon() });
    EXPECT_TRUE (refuses (sketch.output ("t"), "", { "18 junctions", "at most 16" }));
}

TEST (DeviceCheck, LinearCircuitRefusesDevices)
{
    EXPECT_TRUE (hasDevices (supplied().output ("t")));
    EXPECT_TRUE (hasDevices (clipper (1e3, 1e-9).output ("out")));
    EXPECT_FALSE (hasDevices (NetlistSketch().tap ("W1", "a").resistor ("R1", "a", "0", 1e3).output ("a")));
    try
    {
        const LinearCircuit circuit (supplied().output ("t"), { "t" }, 48000.0);
        FAIL() << "not refused";
    }
    catch (const Error& error)
    {
        EXPECT_NE (std::string (error.what()).find ("nonlinear"), std::string::npos) << error.what();
    }
}

} // namespace stopwright

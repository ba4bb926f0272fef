// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/SweptResponse.h"

#include "Circuit/SmallSignal.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

namespace stopwright
{
namespace
{

Netlist tankNetwork()
{
    Netlist netlist;
    netlist.sources = { { "W1", "in", 10e3 }, { "W2", "two", 4.7e3 } };
    netlist.parts = { { "R1", { "in", "out" }, Resistor { 47e3 } },
                      { "L1", { "out", "0" }, Inductor { 1.0, 150.0, 100e-12 } },
                      { "C1", { "out", "0" }, Capacitor { 22e-9 } },
                      { "C2", { "two", "out" }, Capacitor { 1e-9 } },
                      { "R2", { "out", "0" }, Resistor { 100e3 } } };
    netlist.output = "out";
    return netlist;
}

/// Worst difference from SmallSignal over the audio range, relative to the largest response of that source.
double worstAgainstSmallSignal (const Netlist& netlist)
{
    const SweptResponse swept (netlist, netlist.output);
    const SmallSignal nodal (netlist);
    std::vector<double> largest (netlist.sources.size());
    std::vector<double> differences (netlist.sources.size());
    for (double hz = 10.0; hz < 30e3; hz *= 1.031)
    {
        const auto ours = swept.at (hz);
        const auto theirs = nodal.responses (netlist.output, hz);
        for (std::size_t source = 0; source < ours.size(); ++source)
        {
            largest[source] = std::max (largest[source], std::abs (theirs[source]));
            differences[source] = std::max (differences[source], std::abs (ours[source] - theirs[source]));
        }
    }
    double worst = 0.0;
    for (std::size_t source = 0; source < largest.size(); ++source)
        worst = std::max (worst, differences[source] / largest[source]);
    return worst;
}

// A first-order low-pass behind its source resistance: 1 / (1 + j f / fc).
TEST (SweptResponse, OfALowPassIsItsClosedForm)
{
    Netlist netlist;
    netlist.sources = { { "W", "a", 47e3 } };
    netlist.parts = { { "C", { "a", "0" }, Capacitor { 10e-9 } } };
    netlist.output = "a";
    const SweptResponse swept (netlist, "a");
    const double cornerHz = 1.0 / (2.0 * std::numbers::pi * 47e3 * 10e-9);
    for (const double hz : { 1.0, cornerHz, 20e3 })
    {
        const auto expected = 1.0 / std::complex<double> (1.0, hz / cornerHz);
        EXPECT_LT (std::abs (swept.at (hz).front() - expected), 1e-13) << hz;
    }
}

// Nothing that stores: a divider of 10 k and 30 k.
TEST (SweptResponse, OfResistorsOnly)
{
    Netlist netlist;
    netlist.sources = { { "W", "a", 10e3 } };
    netlist.parts = { { "R", { "a", "0" }, Resistor { 30e3 } } };
    netlist.output = "a";
    EXPECT_LT (std::abs (SweptResponse (netlist, "a").at (1000.0).front() - 0.75), 1e-15);
}

// The nodal route of SmallSignal shares no arithmetic with the state space.
TEST (SweptResponse, AgreesWithTheNodalRoute)
{
    EXPECT_LT (worstAgainstSmallSignal (tankNetwork()), 1e-10);
}

// A source straight on a divider of capacitors drives the state space by its rate of change.
TEST (SweptResponse, OfADividerOfCapacitors)
{
    Netlist netlist;
    netlist.sources = { { "W", "a", 0.0 } };
    netlist.parts = { { "C1", { "a", "b" }, Capacitor { 10e-9 } },
                      { "C2", { "b", "0" }, Capacitor { 30e-9 } },
                      { "R", { "b", "0" }, Resistor { 1e6 } } };
    netlist.output = "b";
    EXPECT_LT (worstAgainstSmallSignal (netlist), 1e-10);
    EXPECT_NEAR (std::abs (SweptResponse (netlist, "b").at (20e3).front()), 0.25, 1e-4);
}

// Three equal sections have natural frequencies far apart, an amplifier of 1 MHz one far above them.
TEST (SweptResponse, OfAnActiveNetwork)
{
    OpAmp amplifier;
    amplifier.gainBandwidthHz = 1e6;
    Netlist netlist;
    netlist.sources = { { "W", "a", 100.0 } };
    netlist.parts = { { "R1", { "a", "m" }, Resistor { 39e3 } },     { "R2", { "m", "0" }, Resistor { 1.6e3 } },
                      { "C1", { "m", "out" }, Capacitor { 10e-9 } }, { "C2", { "m", "n" }, Capacitor { 10e-9 } },
                      { "R3", { "n", "out" }, Resistor { 160e3 } },  { "U1", { "0", "n", "out" }, amplifier } };
    netlist.output = "out";
    EXPECT_LT (worstAgainstSmallSignal (netlist), 1e-9);
}

TEST (SweptResponse, OfADiodeAtItsOperatingPoint)
{
    Netlist netlist;
    netlist.sources = { { "W", "a", 10e3 } };
    netlist.parts = { { "V", { "+", "0" }, Supply { 9.0, 0.0 } },
                      { "R", { "+", "a" }, Resistor { 100e3 } },
                      { "D", { "a", "0" }, Diode { 2.52e-9, 1.752, 0.0 } } };
    netlist.output = "a";
    EXPECT_LT (worstAgainstSmallSignal (netlist), 1e-15);
}

TEST (SweptResponse, RefusesANodeThatIsNotThere)
{
    EXPECT_THROW (SweptResponse (tankNetwork(), "nowhere"), Error);
}

} // namespace
} // namespace stopwright

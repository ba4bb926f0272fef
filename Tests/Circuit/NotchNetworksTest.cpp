// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ClosedForm.h"
#include "Circuit/NetlistSketch.h"
#include "Support/Tolerances.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

// Closed forms of the RC bridges as in U. Tietze, C. Schenk, "Electronic Circuits", and A. B. Williams, F. J. Taylor,
// "Electronic Filter Design Handbook" (from memory); each follows from Kirchhoff's laws on half a page.

namespace stopwright
{
namespace
{

using Complex = std::complex<double>;

constexpr double ohms = 47e3;
constexpr double farads = 3.3e-9;
constexpr double tau = ohms * farads;

TEST (NotchNetworks, WienArmIsABandPassOfOneThird)
{
    const auto netlist = NetlistSketch()
                             .tap ("in", "in")
                             .resistor ("R1", "in", "a", ohms)
                             .capacitor ("C1", "a", "out", farads)
                             .resistor ("R2", "out", "0", ohms)
                             .capacitor ("C2", "out", "0", farads)
                             .output ("out");
    const auto closedForm = [] (Complex s) { return s * tau / (1.0 + 3.0 * s * tau + s * s * tau * tau); };
    EXPECT_LT (worstResponseError (netlist, closedForm, 1.0, 200e3), tolerance::transferFunction);
    const auto middle = SmallSignal (netlist).response ("in", "out", 1.0 / (2.0 * std::numbers::pi * tau));
    EXPECT_LT (relativeError (middle, 1.0 / 3.0), tolerance::transferFunction);
}

Netlist twinT (double shuntOhms)
{
    return NetlistSketch()
        .tap ("in", "in")
        .resistor ("R1", "in", "a", ohms)
        .resistor ("R2", "a", "out", ohms)
        .capacitor ("C1", "a", "0", 2.0 * farads)
        .capacitor ("C2", "in", "b", farads)
        .capacitor ("C3", "b", "out", farads)
        .resistor ("R3", "b", "0", shuntOhms)
        .output ("out");
}

TEST (NotchNetworks, TwinTNullsItsFrequency)
{
    const auto closedForm = [] (Complex s)
    { return (1.0 + s * s * tau * tau) / (1.0 + 4.0 * s * tau + s * s * tau * tau); };
    // The grid keeps off the null itself, where a relative error means nothing.
    EXPECT_LT (worstResponseError (twinT (ohms / 2.0), closedForm, 1.0, 200e3), tolerance::transferFunction);

    const double nullHz = 1.0 / (2.0 * std::numbers::pi * tau);
    EXPECT_LT (std::abs (SmallSignal (twinT (ohms / 2.0)).response ("in", "out", nullHz)), 1e-12);
    EXPECT_GT (std::abs (SmallSignal (twinT (ohms / 2.0 * 1.001)).response ("in", "out", nullHz)), 1e-5);
}

TEST (NotchNetworks, BridgedTOfTwoCapacitors)
{
    const double shunt = 2.2e3;
    const double bridge = 150e3;
    const auto netlist = NetlistSketch()
                             .tap ("in", "in")
                             .capacitor ("C1", "in", "a", farads)
                             .capacitor ("C2", "a", "out", farads)
                             .resistor ("R1", "a", "0", shunt)
                             .resistor ("R2", "in", "out", bridge)
                             .output ("out");
    const auto closedForm = [=] (Complex s)
    {
        const Complex ends = 1.0 + shunt * bridge * farads * farads * s * s;
        return (ends + 2.0 * shunt * farads * s) / (ends + (2.0 * shunt + bridge) * farads * s);
    };
    EXPECT_LT (worstResponseError (netlist, closedForm, 1.0, 200e3), tolerance::transferFunction);

    const double dipHz = 1.0 / (2.0 * std::numbers::pi * farads * std::sqrt (shunt * bridge));
    EXPECT_LT (
        relativeError (SmallSignal (netlist).response ("in", "out", dipHz), 2.0 * shunt / (2.0 * shunt + bridge)),
        tolerance::transferFunction);
}

TEST (NotchNetworks, BridgedTOfTwoResistors)
{
    const double bridge = 1e-9;
    const double shunt = 68e-9;
    const auto netlist = NetlistSketch()
                             .tap ("in", "in")
                             .resistor ("R1", "in", "a", ohms)
                             .resistor ("R2", "a", "out", ohms)
                             .capacitor ("C1", "in", "out", bridge)
                             .capacitor ("C2", "a", "0", shunt)
                             .output ("out");
    const auto closedForm = [=] (Complex s)
    {
        const Complex ends = 1.0 + ohms * ohms * bridge * shunt * s * s;
        return (ends + 2.0 * ohms * bridge * s) / (ends + ohms * (2.0 * bridge + shunt) * s);
    };
    EXPECT_LT (worstResponseError (netlist, closedForm, 1.0, 200e3), tolerance::transferFunction);
}

} // namespace
} // namespace stopwright

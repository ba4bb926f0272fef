// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/SmallSignal.h"

#include "Circuit/ClosedForm.h"
#include "Circuit/NetlistSketch.h"
#include "Support/Tolerances.h"
#include "Units/Error.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace stopwright
{
namespace
{

using Complex = std::complex<double>;

Netlist twoTapDivider()
{
    return NetlistSketch()
        .tap ("W1", "a")
        .tap ("W2", "t", 30e3)
        .resistor ("R1", "a", "t", 10e3)
        .resistor ("R2", "t", "0", 15e3)
        .output ("t");
}

TEST (SmallSignal, AnswersForEveryTapInOrder)
{
    const SmallSignal analysis (twoTapDivider());
    // Closed form: conductances 6 : 2 : 4 in units of 1/60 k.
    const auto both = analysis.responses ("t", 440.0);
    ASSERT_EQ (both.size(), 2U);
    EXPECT_LT (relativeError (both[0], 0.5), tolerance::algebra);
    EXPECT_LT (relativeError (both[1], 1.0 / 6.0), tolerance::algebra);
    EXPECT_EQ (analysis.response ("W2", "t", 440.0), both[1]);
    EXPECT_EQ (analysis.response ("W1", "a", 440.0), Complex (1.0));
    EXPECT_EQ (analysis.response ("W1", "0", 440.0), Complex (0.0));
}

TEST (SmallSignal, ImpedanceIsSeenWithTapsAtZeroVolts)
{
    const SmallSignal analysis (twoTapDivider());
    EXPECT_LT (relativeError (analysis.impedance ("t", 440.0), 5e3), tolerance::algebra);
    EXPECT_EQ (analysis.impedance ("a", 440.0), Complex (0.0));
    EXPECT_EQ (analysis.impedance ("0", 440.0), Complex (0.0));
}

TEST (SmallSignal, SaysWhichTapOrNodeIsNotThere)
{
    const SmallSignal analysis (twoTapDivider());
    EXPECT_THROW ((void) analysis.response ("W3", "t", 440.0), Error);
    EXPECT_THROW ((void) analysis.impedance ("x", 440.0), Error);
    EXPECT_THROW ((void) analysis.response ("W1", "t", -1.0), Error);
    EXPECT_THROW ((void) analysis.response ("W1", "t", std::numeric_limits<double>::quiet_NaN()), Error);
    EXPECT_THROW (SmallSignal { Netlist {} }, Error);
}

TEST (SmallSignal, ClosedSwitchesMakeOneNode)
{
    const auto sketch = [] (bool closed)
    {
        return NetlistSketch()
            .tap ("in", "in")
            .resistor ("R1", "in", "t", 10e3)
            .contact ("S1", "t", "u", closed)
            .resistor ("R2", "u", "0", 10e3)
            .resistor ("R3", "t", "0", 1e6)
            .output ("t");
    };
    EXPECT_LT (relativeError (SmallSignal (sketch (true)).response ("in", "u", 100.0), 1e-4 / (2e-4 + 1e-6)),
               tolerance::algebra);
    EXPECT_EQ (SmallSignal (sketch (false)).response ("in", "u", 100.0), Complex (0.0));
}

TEST (SmallSignal, ShortedPartsCarryNothing)
{
    const auto netlist = NetlistSketch()
                             .tap ("in", "in")
                             .resistor ("R1", "in", "t", 10e3)
                             .inductor ("L1", "t", "u", 1.0)
                             .capacitor ("C1", "t", "u", 1e-9)
                             .contact ("S1", "t", "u", true)
                             .resistor ("R2", "u", "0", 10e3)
                             .output ("u");
    EXPECT_LT (relativeError (SmallSignal (netlist).response ("in", "u", 1e3), 0.5), tolerance::algebra);
    EXPECT_TRUE (SmallSignal (netlist).poles().empty());
}

TEST (SmallSignal, CoilWithoutWindingPassesDirectCurrent)
{
    const auto netlist =
        NetlistSketch().tap ("in", "in").inductor ("L1", "in", "t", 1.0).resistor ("R1", "t", "0", 47e3).output ("t");
    EXPECT_LT (relativeError (SmallSignal (netlist).response ("in", "t", 0.0), 1.0), tolerance::algebra);
    EXPECT_LT (worstResponseError (
                   netlist, [] (Complex s) { return 47e3 / (47e3 + s); }, 1e-3, 1e6),
               tolerance::transferFunction);
}

TEST (SmallSignal, AtRestNodesBetweenCapacitorsKeepTheirLimit)
{
    const auto netlist = NetlistSketch()
                             .tap ("in", "in", 600.0)
                             .capacitor ("C1", "in", "t", 3e-9)
                             .capacitor ("C2", "t", "0", 1e-9)
                             .output ("t");
    const SmallSignal analysis (netlist);
    EXPECT_LT (relativeError (analysis.response ("in", "t", 0.0), 0.75), tolerance::transferFunction);
    EXPECT_TRUE (std::isinf (analysis.impedance ("t", 0.0).real()));
}

TEST (SmallSignal, AtRestAnIntegratorHasNoLimit)
{
    const auto netlist = NetlistSketch()
                             .tap ("in", "in")
                             .resistor ("R1", "in", "m", 10e3)
                             .capacitor ("C1", "m", "t", 10e-9)
                             .opAmp ("U1", "0", "m", "t")
                             .output ("t");
    const SmallSignal analysis (netlist);
    EXPECT_TRUE (std::isinf (analysis.response ("in", "t", 0.0).real()));
    EXPECT_LT (worstResponseError (
                   netlist, [] (Complex s) { return -1.0 / (s * 1e-4); }, 1e-2, 1e6),
               tolerance::transferFunction);
    ASSERT_EQ (analysis.poles().size(), 1U);
    EXPECT_EQ (analysis.poles().front(), Complex (0.0));
}

TEST (SmallSignal, ValuesFarApartKeepTheirDigits)
{
    // A milliohm and a gigohm at one node: in double their conductances add up to the milliohm alone.
    const auto netlist = NetlistSketch()
                             .tap ("in", "in", 1e9)
                             .resistor ("R1", "in", "t", 1.5)
                             .potentiometer ("P1", "t", "w", "e", { 100e3, 1.0, Taper::linear })
                             .resistor ("R2", "e", "0", 1e9)
                             .capacitor ("C1", "w", "0", 1e-12)
                             .output ("w");
    // P1 at its end: 0.1 ohm above the wiper, the whole track below.
    const auto closedForm = [] (Complex s)
    {
        const Complex load = 1.0 / (s * 1e-12 + 1.0 / (1e9 + 100e3));
        return load / (load + 1e9 + 1.5 + 0.1);
    };
    EXPECT_LT (worstResponseError (netlist, closedForm, 1e-2, 1e6), tolerance::transferFunction);
}

TEST (SmallSignal, DeepSkirtsKeepTheirDigits)
{
    // Ten equal sections from an ideal source, ABCD matrices multiplied out.
    constexpr double tau = 1e-4;
    NetlistSketch sketch;
    sketch.tap ("in", "n0");
    for (std::size_t k = 1; k <= 10; ++k)
        sketch.resistor (numbered ("R", k), numbered ("n", k - 1), numbered ("n", k), 10e3)
            .capacitor (numbered ("C", k), numbered ("n", k), "0", 10e-9);
    const auto closedForm = [] (Complex s)
    {
        std::complex<long double> volts = 1.0L;
        std::complex<long double> drop = 0.0L;
        for (int k = 0; k < 10; ++k)
        {
            drop += std::complex<long double> (s) * static_cast<long double> (tau) * volts;
            volts += drop;
        }
        return 1.0 / Complex (volts);
    };
    // 1 MHz lies 280 dB down.
    EXPECT_LT (worstResponseError (sketch.output ("n10"), closedForm, 1.0, 1e6), tolerance::transferFunction);
}

TEST (SmallSignal, PolesOfASeriesCircuit)
{
    // s^2 + (R/L) s + 1/(LC): critically damped, under- and overdamped.
    for (const double ohms : { 100.0, 2500.0, 50e3 })
    {
        const auto netlist = NetlistSketch()
                                 .tap ("in", "in")
                                 .resistor ("R1", "in", "a", ohms)
                                 .inductor ("L1", "a", "b", 0.5)
                                 .capacitor ("C1", "b", "0", 22e-9)
                                 .output ("b");
        const auto poles = SmallSignal (netlist).poles();
        ASSERT_EQ (poles.size(), 2U);
        const double half = ohms / (2.0 * 0.5);
        const Complex root = std::sqrt (Complex (half * half - 1.0 / (0.5 * 22e-9)));
        const bool isPair = root.real() < root.imag();
        // A pair comes with the positive imaginary part first, real ones with the slower first.
        EXPECT_LT (relativeError (poles[0], isPair ? -half + root : (1.0 / (0.5 * 22e-9)) / (-half - root)),
                   tolerance::transferFunction);
        EXPECT_LT (relativeError (poles[1], -half - root), tolerance::transferFunction);
    }
}

TEST (SmallSignal, DependentStoresAddNoPoles)
{
    // Capacitor loop, capacitor across an ideal tap, cut-set of coils: one pole each where two stores are drawn.
    const auto loop = NetlistSketch()
                          .tap ("in", "in")
                          .capacitor ("C0", "in", "0", 47e-9)
                          .resistor ("R1", "in", "t", 10e3)
                          .capacitor ("C1", "t", "0", 10e-9)
                          .capacitor ("C2", "t", "0", 12e-9)
                          .output ("t");
    const auto loopPoles = SmallSignal (loop).poles();
    ASSERT_EQ (loopPoles.size(), 1U);
    EXPECT_LT (relativeError (loopPoles[0], -1.0 / (10e3 * 22e-9)), tolerance::transferFunction);

    const auto cutSet = NetlistSketch()
                            .tap ("in", "in", 1e3)
                            .inductor ("L1", "in", "a", 0.3)
                            .inductor ("L2", "a", "t", 0.2)
                            .resistor ("R1", "t", "0", 4e3)
                            .output ("t");
    const auto cutPoles = SmallSignal (cutSet).poles();
    ASSERT_EQ (cutPoles.size(), 1U);
    EXPECT_LT (relativeError (cutPoles[0], -5e3 / 0.5), tolerance::transferFunction);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ClosedForm.h"
#include "Circuit/NetlistSketch.h"
#include "Support/Tolerances.h"

#include <array>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

// The resonant networks of stop filters against their closed forms (Kirchhoff's laws), and against
// worked values, rounded as printed. "0.006" and the like is half a unit of the last printed digit, and a little.

namespace stopwright
{
namespace
{

using Complex = std::complex<double>;

constexpr double pi = std::numbers::pi;

struct Tank
{
    double henries, farads, windingOhms, feedOhms, loadOhms;

    Netlist netlist() const
    {
        return NetlistSketch()
            .tap ("in", "in")
            .resistor ("R1", "in", "t", feedOhms)
            .inductor ("L1", "t", "0", henries, windingOhms)
            .capacitor ("C1", "t", "0", farads)
            .resistor ("R2", "t", "0", loadOhms)
            .output ("t");
    }

    Complex response (Complex s) const
    {
        return (1.0 / feedOhms) / (1.0 / feedOhms + 1.0 / loadOhms + s * farads + 1.0 / (windingOhms + s * henries));
    }
};

TEST (Resonators, ShuntTanks)
{
    struct Row
    {
        Tank tank;
        double peakHz, peakDb, lowerHz, upperHz, quality;
    };

    for (const auto& row : { Row { { 1.0, 22e-9, 150.0, 47e3, 100e3 }, 1075.529, -4.2155, 957.70, 1207.84, 4.2997 },
                             Row { { 1.0, 22e-9, 150.0, 10e3, 100e3 }, 1081.763, -1.0825, 746.90, 1566.55, 1.3198 },
                             Row { { 3.0, 10e-9, 400.0, 47e3, 1e6 }, 922.946, -0.9016, 753.97, 1129.74, 2.4562 },
                             Row { { 0.5, 47e-9, 90.0, 22e3, 47e3 }, 1041.314, -4.3685, 921.75, 1176.36, 4.0897 } })
    {
        const auto netlist = row.tank.netlist();
        EXPECT_LT (worstResponseError (
                       netlist, [&row] (Complex s) { return row.tank.response (s); }, 1.0, 200e3),
                   tolerance::transferFunction);

        const SmallSignal analysis (netlist);
        const auto level = [&] (double hz) { return responseDb (analysis, netlist, hz); };
        const double peak = peakHz (level, 500.0, 2000.0);
        const double edge = level (peak) + 20.0 * std::log10 (std::sqrt (0.5));
        const double lower = crossingHz (level, edge, 50.0, peak);
        const double upper = crossingHz (level, edge, peak, 9000.0);
        EXPECT_NEAR (peak, row.peakHz, 1e-3);
        EXPECT_NEAR (level (peak), row.peakDb, 6e-5);
        EXPECT_NEAR (lower, row.lowerHz, 6e-3);
        EXPECT_NEAR (upper, row.upperHz, 6e-3);
        EXPECT_NEAR (peak / (upper - lower), row.quality, 6e-5);
    }
}

TEST (Resonators, SelfCapacitanceLiesAcrossCoilAndWinding)
{
    const auto netlist = NetlistSketch()
                             .tap ("in", "in")
                             .resistor ("R1", "in", "t", 47e3)
                             .inductor ("L1", "t", "0", 4.7, 300.0, 150e-12)
                             .output ("t");
    const auto closedForm = [] (Complex s)
    { return (1.0 / 47e3) / (1.0 / 47e3 + s * 150e-12 + 1.0 / (300.0 + s * 4.7)); };
    EXPECT_LT (worstResponseError (netlist, closedForm, 1.0, 200e3), tolerance::transferFunction);
}

/// Series coil and capacitor from a node loaded with 100 k to common.
Netlist trap (double sourceOhms)
{
    return NetlistSketch()
        .tap ("in", "t", sourceOhms)
        .resistor ("RL", "t", "0", 100e3)
        .inductor ("L1", "t", "a", 1.0, 150.0)
        .capacitor ("C1", "a", "0", 22e-9)
        .output ("t");
}

TEST (Resonators, SeriesTraps)
{
    struct Row
    {
        double sourceOhms, lowerHz, upperHz, depthDb;
    };

    const double trapHz = 1.0 / (2.0 * pi * std::sqrt (22e-9));
    EXPECT_NEAR (trapHz, 1073.022, 1e-3);
    for (const auto& row : { Row { 47e3, 216.08, 5328.47, 46.61 }, Row { 1e3, 987.58, 1165.86, 17.62 },
                             Row { 4.7e3, 765.85, 1503.40, 29.81 } })
    {
        const auto netlist = trap (row.sourceOhms);
        const double loadShare = 100e3 / (100e3 + row.sourceOhms);
        const double thevenin = row.sourceOhms * loadShare;
        const auto closedForm = [=] (Complex s)
        {
            const Complex arm = 150.0 + s + 1.0 / (s * 22e-9);
            return loadShare * arm / (arm + thevenin);
        };
        EXPECT_LT (worstResponseError (netlist, closedForm, 1.0, 200e3), tolerance::transferFunction);

        const SmallSignal analysis (netlist);
        const auto depth = [&] (double hz)
        { return responseDb (analysis, netlist, hz) - 20.0 * std::log10 (loadShare); };
        const double edge = 20.0 * std::log10 (std::sqrt (0.5));
        EXPECT_NEAR (crossingHz (depth, edge, 1.0, trapHz), row.lowerHz, 6e-3);
        EXPECT_NEAR (crossingHz (depth, edge, trapHz, 1e6), row.upperHz, 6e-3);
        EXPECT_NEAR (depth (trapHz), 20.0 * std::log10 (150.0 / (150.0 + thevenin)), 1e-9);
        EXPECT_NEAR (depth (trapHz), -row.depthDb, 6e-3);
    }
    const auto deep = trap (47e3);
    EXPECT_NEAR (responseDb (SmallSignal (deep), deep, trapHz), -49.96, 6e-3);
}

TEST (Resonators, SeriesArmIsHardlyAPeak)
{
    const auto netlist = NetlistSketch()
                             .tap ("in", "in", 2.2e3)
                             .inductor ("L1", "in", "a", 1.0, 150.0)
                             .capacitor ("C1", "a", "t", 22e-9)
                             .resistor ("RL", "t", "0", 10e3)
                             .output ("t");
    const SmallSignal analysis (netlist);
    const auto level = [&] (double hz) { return responseDb (analysis, netlist, hz); };
    const double peak = peakHz (level, 500.0, 2000.0);
    EXPECT_NEAR (level (peak), -1.833, 6e-4);
    const double edge = level (peak) + 20.0 * std::log10 (std::sqrt (0.5));
    EXPECT_NEAR (peak / (crossingHz (level, edge, peak, 1e5) - crossingHz (level, edge, 10.0, peak)), 0.5459, 6e-5);
}

/// Resonance of a coil and a capacitor alone, from the poles.
double resonanceHz (double henries, double farads)
{
    const auto netlist = NetlistSketch()
                             .tap ("in", "t", 1e12)
                             .inductor ("L1", "t", "0", henries)
                             .capacitor ("C1", "t", "0", farads)
                             .output ("t");
    return std::abs (SmallSignal (netlist).poles().front()) / (2.0 * pi);
}

double cornerHz (double ohms, double farads)
{
    const auto netlist = NetlistSketch()
                             .tap ("in", "in")
                             .resistor ("R1", "in", "t", ohms)
                             .capacitor ("C1", "t", "0", farads)
                             .output ("t");
    return std::abs (SmallSignal (netlist).poles().front()) / (2.0 * pi);
}

TEST (Resonators, TolerancesShiftResonancesAndCorners)
{
    const auto percent = [] (double shifted, double nominal) { return 100.0 * (shifted / nominal - 1.0); };
    const auto cents = [] (double shifted, double nominal) { return 1200.0 * std::log2 (shifted / nominal); };
    const double resonance = resonanceHz (1.0, 22e-9);
    EXPECT_NEAR (percent (resonanceHz (1.1, 24.2e-9), resonance), -9.091, 6e-4);
    EXPECT_NEAR (cents (resonanceHz (1.1, 24.2e-9), resonance), -165.0, 0.06);
    EXPECT_NEAR (percent (resonanceHz (0.9, 19.8e-9), resonance), 11.111, 6e-4);
    EXPECT_NEAR (cents (resonanceHz (0.9, 19.8e-9), resonance), 182.4, 0.06);
    const double corner = cornerHz (47e3, 10e-9);
    EXPECT_NEAR (percent (cornerHz (51.7e3, 11e-9), corner), -17.36, 6e-3);
    EXPECT_NEAR (cents (cornerHz (51.7e3, 11e-9), corner), -330.0, 0.06);
    EXPECT_NEAR (percent (cornerHz (54.05e3, 12e-9), corner), -27.54, 6e-3);
}

} // namespace
} // namespace stopwright

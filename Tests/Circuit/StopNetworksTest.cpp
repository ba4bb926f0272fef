// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ClosedForm.h"
#include "Circuit/NetlistSketch.h"
#include "Support/Tolerances.h"

#include <array>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

// The passive networks of stop filters and mixing buses against their closed forms (Kirchhoff's laws), and against
// worked values, rounded as printed. "0.006" and the like is half a unit of the last printed digit, and a little.

namespace stopwright
{
namespace
{

using Complex = std::complex<double>;

constexpr double pi = std::numbers::pi;

/// C1 .. C8 in equal temperament at A4 = 440 Hz.
double noteC (int octave)
{
    return 440.0 * std::pow (2.0, (12 * octave - 57) / 12.0);
}

TEST (StopNetworks, IntegratorLevelsOfTheOctaves)
{
    const auto netlist = NetlistSketch()
                             .tap ("in", "in")
                             .resistor ("R1", "in", "t", 47e3)
                             .capacitor ("C1", "t", "0", 100e-9)
                             .output ("t");
    EXPECT_LT (worstResponseError (
                   netlist, [] (Complex s) { return 1.0 / (1.0 + s * 4.7e-3); }, 1.0, 200e3),
               tolerance::transferFunction);
    const SmallSignal analysis (netlist);
    const std::array<double, 6> levels { -6.749, -12.020, -17.831, -23.798, -29.805, -35.822 };
    for (int octave = 2; octave <= 7; ++octave)
        EXPECT_NEAR (responseDb (analysis, netlist, noteC (octave)), levels[static_cast<std::size_t> (octave - 2)],
                     6e-4);
}

TEST (StopNetworks, CouplerLevelsAndPhases)
{
    const auto netlist = NetlistSketch()
                             .tap ("in", "in")
                             .capacitor ("C1", "in", "t", 100e-9)
                             .resistor ("R1", "t", "0", 47e3)
                             .output ("t");
    const SmallSignal analysis (netlist);
    const std::array<double, 4> levels { -3.164, -1.031, -0.282, -0.072 };
    const std::array<double, 4> degrees { 46.0, 27.4, 14.5, 7.4 };
    for (int octave = 1; octave <= 4; ++octave)
    {
        const auto index = static_cast<std::size_t> (octave - 1);
        EXPECT_NEAR (responseDb (analysis, netlist, noteC (octave)), levels[index], 6e-4);
        EXPECT_NEAR (std::arg (analysis.response ("in", "t", noteC (octave))) * 180.0 / pi, degrees[index], 0.06);
    }
}

TEST (StopNetworks, SectionsWithoutBuffersLoadEachOther)
{
    // -3 dB points in units of one section's corner, and the level at that corner.
    const double cornerHz = 1.0 / (2.0 * pi * 47e3 * 10e-9);
    const std::array<double, 3> ratios { 0.374239, 0.194286, 0.118490 };
    const std::array<double, 3> levels { -9.542, -16.128, -22.504 };
    for (std::size_t sections = 2; sections <= 4; ++sections)
    {
        NetlistSketch sketch;
        sketch.tap ("in", "n0");
        for (std::size_t k = 1; k <= sections; ++k)
        {
            const auto node = numbered ("n", k);
            sketch.resistor (numbered ("R", k), numbered ("n", k - 1), node, 47e3)
                .capacitor (numbered ("C", k), node, "0", 10e-9);
        }
        const auto netlist = sketch.output (numbered ("n", sections));
        const SmallSignal analysis (netlist);
        const auto level = [&] (double hz) { return responseDb (analysis, netlist, hz); };
        EXPECT_NEAR (crossingHz (level, 20.0 * std::log10 (std::sqrt (0.5)), 1.0, cornerHz) / cornerHz,
                     ratios[sections - 2], 6e-7);
        EXPECT_NEAR (level (cornerHz), levels[sections - 2], 6e-4);
    }
}

/// One live source of 47 k among `count`, the others at zero volts.
double busLevelDb (std::size_t count, double resistorOhms, double loadOhms)
{
    NetlistSketch sketch;
    sketch.tap ("in", "in").resistor ("R1", "in", "bus", resistorOhms).resistor ("RL", "bus", "0", loadOhms);
    for (std::size_t k = 2; k <= count; ++k)
        sketch.resistor (numbered ("R", k), "bus", "0", resistorOhms);
    const auto netlist = sketch.output ("bus");
    return responseDb (SmallSignal (netlist), netlist, 1000.0);
}

TEST (StopNetworks, PassiveBusLevels)
{
    struct Row
    {
        std::size_t count;
        double loadOhms, level;
    };

    for (const auto& row :
         { Row { 1, 100e3, -3.346 }, Row { 2, 100e3, -7.854 }, Row { 5, 100e3, -14.760 }, Row { 8, 100e3, -18.558 },
           Row { 9, 100e3, -19.527 }, Row { 10, 100e3, -20.399 }, Row { 8, 10e3, -22.076 }, Row { 9, 10e3, -22.734 },
           Row { 8, 1e3, -34.807 }, Row { 9, 1e3, -34.964 } })
    {
        EXPECT_NEAR (busLevelDb (row.count, 47e3, row.loadOhms), row.level, 6e-4);
        const double closedForm = (1.0 / 47e3) / (static_cast<double> (row.count) / 47e3 + 1.0 / row.loadOhms);
        EXPECT_NEAR (busLevelDb (row.count, 47e3, row.loadOhms), 20.0 * std::log10 (closedForm), 1e-11);
    }
    EXPECT_NEAR (busLevelDb (9, 47e3, 1e12) - busLevelDb (8, 47e3, 1e12), -1.0231, 6e-5);
    EXPECT_NEAR (busLevelDb (10, 220e3, 10e3) - busLevelDb (1, 220e3, 10e3), -2.868, 6e-4);
}

TEST (StopNetworks, PassiveBusImpedance)
{
    NetlistSketch sketch;
    sketch.resistor ("RL", "bus", "0", 100e3);
    for (std::size_t k = 1; k <= 8; ++k)
        sketch.tap (numbered ("W", k), "bus", 47e3);
    const auto seen = SmallSignal (sketch.output ("bus")).impedance ("bus", 1000.0);
    EXPECT_LT (relativeError (seen, 1.0 / (8.0 / 47e3 + 1.0 / 100e3)), tolerance::transferFunction);
    EXPECT_NEAR (seen.real(), 5549.0, 0.6);
}

} // namespace
} // namespace stopwright

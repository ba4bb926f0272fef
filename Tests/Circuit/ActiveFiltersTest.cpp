// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ClosedForm.h"
#include "Circuit/NetlistSketch.h"
#include "Support/Tolerances.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

// R. P. Sallen, E. L. Key, "A practical method of designing RC active filters", 1955; multiple-feedback band-pass and its
// design equations as in op-amp application notes of the 1970s and U. Tietze, C. Schenk, "Electronic Circuits" (from
// memory). Every closed form follows from Kirchhoff's laws.

namespace stopwright
{
namespace
{

using Complex = std::complex<double>;

constexpr double pi = std::numbers::pi;

OpAmp withBandwidth (double gainBandwidthHz)
{
    OpAmp amplifier;
    amplifier.gainBandwidthHz = gainBandwidthHz;
    return amplifier;
}

struct SallenKey
{
    double r1 = 12e3, r2 = 33e3, c1 = 10e-9, c2 = 2.2e-9, gain = 1.8;

    /// Amplifier of this gain from "b" to "out".
    NetlistSketch amplifier() const
    {
        return NetlistSketch()
            .tap ("in", "in")
            .opAmp ("U1", "b", "m", "out")
            .resistor ("RA", "m", "0", 10e3)
            .resistor ("RB", "m", "out", (gain - 1.0) * 10e3);
    }
};

TEST (ActiveFilters, SallenKeyLowPass)
{
    const SallenKey f;
    const auto netlist = f.amplifier()
                             .resistor ("R1", "in", "a", f.r1)
                             .resistor ("R2", "a", "b", f.r2)
                             .capacitor ("C1", "a", "out", f.c1)
                             .capacitor ("C2", "b", "0", f.c2)
                             .output ("out");
    const auto closedForm = [f] (Complex s)
    {
        return f.gain
               / (1.0 + s * (f.c2 * (f.r1 + f.r2) + f.r1 * f.c1 * (1.0 - f.gain)) + s * s * f.r1 * f.r2 * f.c1 * f.c2);
    };
    EXPECT_LT (worstResponseError (netlist, closedForm, 1.0, 200e3), tolerance::transferFunction);
}

TEST (ActiveFilters, SallenKeyHighPass)
{
    const SallenKey f;
    const auto netlist = f.amplifier()
                             .capacitor ("C1", "in", "a", f.c1)
                             .capacitor ("C2", "a", "b", f.c2)
                             .resistor ("R1", "a", "out", f.r1)
                             .resistor ("R2", "b", "0", f.r2)
                             .output ("out");
    const auto closedForm = [f] (Complex s)
    {
        const Complex square = s * s * f.r1 * f.r2 * f.c1 * f.c2;
        return f.gain * square / (1.0 + s * (f.r1 * (f.c1 + f.c2) + f.r2 * f.c2 * (1.0 - f.gain)) + square);
    };
    EXPECT_LT (worstResponseError (netlist, closedForm, 1.0, 200e3), tolerance::transferFunction);
}

struct BandPass
{
    double r1, r2, r3;
    double farads = 10e-9;

    Netlist netlist (const OpAmp& amplifier = {}) const
    {
        return NetlistSketch()
            .tap ("in", "in")
            .resistor ("R1", "in", "a", r1)
            .resistor ("R2", "a", "0", r2)
            .capacitor ("C1", "a", "out", farads)
            .capacitor ("C2", "a", "m", farads)
            .resistor ("R3", "m", "out", r3)
            .opAmp ("U1", "0", "m", "out", amplifier)
            .output ("out");
    }

    /// Input and feedback meet at "a"; `inverseGain` is 1/A(s), so v_m = -v_out/A.
    Complex response (Complex s, Complex inverseGain) const
    {
        const Complex sc = s * farads;
        const double g1 = 1.0 / r1;
        const double g2 = 1.0 / r2;
        const double g3 = 1.0 / r3;
        // Node m: sc (v_m - v_a) + g3 (v_m - v_out) = 0, node a: (g1 + g2 + 2 sc) v_a - g1 v_in - sc v_out - sc v_m = 0.
        const Complex aOfOut = -(inverseGain * (sc + g3) + g3) / sc;
        return g1 / ((g1 + g2 + 2.0 * sc) * aOfOut - sc + sc * inverseGain);
    }

    double centreHz() const { return std::sqrt ((r1 + r2) / (r1 * r2 * r3)) / (2.0 * pi * farads); }

    double quality() const { return pi * centreHz() * farads * r3; }

    double gain() const { return r3 / (2.0 * r1); }
};

/// R1 = Q/(2 pi f C A), R2 = Q/(2 pi f C (2 Q^2 - A)), R3 = Q/(pi f C).
BandPass designed (double centreHz, double quality, double gain)
{
    const double base = quality / (2.0 * pi * centreHz * 10e-9);
    return { base / gain, base / (2.0 * quality * quality - gain), 2.0 * base };
}

TEST (ActiveFilters, MultipleFeedbackBandPassIsAsDesigned)
{
    const auto filter = designed (1000.0, 5.0, 2.0);
    EXPECT_NEAR (filter.r1, 39.789e3, 0.5);
    EXPECT_NEAR (filter.r2, 1.658e3, 0.5);
    EXPECT_NEAR (filter.r3, 159.155e3, 0.5);
    const auto closedForm = [] (Complex s)
    {
        const Complex normal = s / (2.0 * pi * 1000.0);
        return -2.0 * (normal / 5.0) / (1.0 + normal / 5.0 + normal * normal);
    };
    EXPECT_LT (worstResponseError (filter.netlist(), closedForm, 1.0, 200e3), tolerance::transferFunction);
}

TEST (ActiveFilters, MultipleFeedbackBandPassFromStock)
{
    // Centre, Q and gain by the design equations; the level at the centre must be the gain.
    struct Row
    {
        BandPass filter;
        double centreHz, quality, gain;
    };

    for (const auto& row :
         { Row { { 39e3, 1.6e3, 160e3 }, 1014.92, 5.10, 2.051 }, Row { { 39e3, 1.8e3, 150e3 }, 990.69, 4.67, 1.923 } })
    {
        const SmallSignal analysis (row.filter.netlist());
        const auto level = [&] (double hz) { return std::abs (analysis.response ("in", "out", hz)); };
        const double centre = peakHz (level, 500.0, 2000.0);
        EXPECT_NEAR (centre, row.centreHz, 0.005);
        EXPECT_NEAR (level (centre), row.gain, 0.0005);
        const double lower = crossingHz (level, level (centre) / std::sqrt (2.0), 100.0, centre);
        const double upper = crossingHz (level, level (centre) / std::sqrt (2.0), centre, 9000.0);
        EXPECT_NEAR (centre / (upper - lower), row.quality, 0.005);
        EXPECT_NEAR (row.filter.centreHz(), centre, 1e-3);
        EXPECT_NEAR (row.filter.quality(), centre / (upper - lower), 1e-5);
    }
}

TEST (ActiveFilters, MultipleFeedbackBandPassWithFiniteBandwidth)
{
    for (const double gainBandwidthHz : { 100e3, 1e6, 3e6 })
    {
        const auto filter = designed (1000.0, 5.0, 2.0);
        const auto closedForm = [&] (Complex s) { return filter.response (s, s / (2.0 * pi * gainBandwidthHz)); };
        EXPECT_LT (worstResponseError (filter.netlist (withBandwidth (gainBandwidthHz)), closedForm, 1.0, 200e3),
                   tolerance::transferFunction);
    }
}

TEST (ActiveFilters, FiniteBandwidthLowersTheCentre)
{
    struct Row
    {
        double designHz, quality, gainBandwidthHz, centreHz;
    };

    // Peak frequencies of the closed form above.
    for (const auto& row : { Row { 1e3, 5.0, 1e6, 995.0 }, Row { 3e3, 10.0, 1e6, 2913.8 }, Row { 1e3, 5.0, 3e6, 998.3 },
                             Row { 3e3, 10.0, 3e6, 2970.4 } })
    {
        const auto netlist = designed (row.designHz, row.quality, 2.0).netlist (withBandwidth (row.gainBandwidthHz));
        const SmallSignal analysis (netlist);
        const auto level = [&] (double hz) { return std::abs (analysis.response ("in", "out", hz)); };
        EXPECT_NEAR (peakHz (level, 0.5 * row.designHz, 1.5 * row.designHz), row.centreHz, 0.06);
    }
}

TEST (ActiveFilters, FollowerWithFiniteGainAndBandwidth)
{
    OpAmp amplifier;
    amplifier.gainBandwidthHz = 1e6;
    amplifier.openLoopDb = 60.0;
    const auto netlist = NetlistSketch().tap ("in", "in").opAmp ("U1", "in", "out", "out", amplifier).output ("out");
    // A = A0/(1 + s A0/wt); a follower gives A/(1 + A).
    const auto closedForm = [] (Complex s) { return 1.0 / (1.0 + 1e-3 + s / (2.0 * pi * 1e6)); };
    EXPECT_LT (worstResponseError (netlist, closedForm, 1.0, 20e6), tolerance::transferFunction);
}

TEST (ActiveFilters, OpenLoopGainAloneLowersTheLevel)
{
    OpAmp amplifier;
    amplifier.openLoopDb = 40.0;
    const auto netlist = NetlistSketch()
                             .tap ("in", "in")
                             .resistor ("R1", "in", "m", 47e3)
                             .resistor ("R2", "m", "out", 56e3)
                             .opAmp ("U1", "0", "m", "out", amplifier)
                             .output ("out");
    const double ratio = 56.0 / 47.0;
    EXPECT_LT (worstResponseError (
                   netlist, [=] (Complex) { return -ratio / (1.0 + (1.0 + ratio) / 100.0); }, 1.0, 1e6, 5),
               tolerance::transferFunction);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ClosedForm.h"
#include "Circuit/NetlistSketch.h"
#include "Support/Tolerances.h"

#include <array>
#include <gtest/gtest.h>

// The passive network of treble, middle and bass controls whose transfer function D. T. Yeh and J. O. Smith gave in
// closed form at DAFx-06 (coefficients from memory).

namespace stopwright
{
namespace
{

using Complex = std::complex<double>;

constexpr double c1 = 0.25e-9, c2 = 20e-9, c3 = 20e-9;
constexpr double r1 = 250e3, r2 = 1e6, r3 = 25e3, r4 = 56e3;

struct Controls
{
    double treble, bass, middle;
};

Netlist network (const Controls& controls)
{
    const auto turned = [] (double ohms, double position) { return Potentiometer { ohms, position, Taper::linear }; };
    return NetlistSketch()
        .tap ("in", "in")
        .capacitor ("C1", "in", "top", c1)
        .resistor ("R4", "in", "slope", r4)
        .potentiometer ("treble", "top", "out", "low", turned (r1, controls.treble))
        .capacitor ("C2", "slope", "low", c2)
        .potentiometer ("bass", "low", "low", "mid", turned (r2, controls.bass))
        .capacitor ("C3", "slope", "tap", c3)
        .potentiometer ("middle", "mid", "tap", "0", turned (r3, controls.middle))
        .output ("out");
}

/// H = (b1 s + b2 s^2 + b3 s^3) / (1 + a1 s + a2 s^2 + a3 s^3).
struct Coefficients
{
    std::array<double, 3> b, a;

    Complex at (Complex s) const
    {
        return s * (b[0] + s * (b[1] + s * b[2])) / (1.0 + s * (a[0] + s * (a[1] + s * a[2])));
    }
};

Coefficients published (const Controls& controls)
{
    const auto [t, l, m] = controls;
    const double middle = m - m * m;
    const double cubic = c1 * c2 * c3;
    Coefficients k {};
    k.b[0] = t * c1 * r1 + m * c3 * r3 + l * (c1 + c2) * r2 + (c1 + c2) * r3;
    k.b[1] = t * c1 * (c2 + c3) * r1 * r4 + middle * (c1 + c2) * c3 * r3 * r3 + m * c1 * c3 * r1 * r3
             + l * (c1 * c2 * r1 * r2 + c1 * (c2 + c3) * r2 * r4) + l * m * (c1 + c2) * c3 * r2 * r3 + c1 * c2 * r1 * r3
             + c1 * (c2 + c3) * r3 * r4;
    k.b[2] = l * m * cubic * r2 * r3 * (r1 + r4) + middle * cubic * r3 * r3 * (r1 + r4)
             + t * (1.0 - m) * cubic * r1 * r3 * r4 + t * l * cubic * r1 * r2 * r4;
    k.a[0] = c1 * r1 + (c1 + c2) * r3 + (c2 + c3) * r4 + m * c3 * r3 + l * (c1 + c2) * r2;
    k.a[1] = m * (c1 * c3 * r1 * r3 - c2 * c3 * r3 * r4) + middle * (c1 + c2) * c3 * r3 * r3
             + l * m * (c1 + c2) * c3 * r2 * r3 + l * (c1 * c2 * r1 * r2 + (c1 * c2 + c1 * c3 + c2 * c3) * r2 * r4)
             + c1 * (c2 + c3) * r1 * r4 + c1 * c2 * r1 * r3 + (c1 * c2 + c1 * c3 + c2 * c3) * r3 * r4;
    k.a[2] = l * m * cubic * r2 * r3 * (r1 + r4) + middle * cubic * r3 * r3 * (r1 + r4)
             + (1.0 - m) * cubic * r1 * r3 * r4 + l * cubic * r1 * r2 * r4;
    return k;
}

TEST (ToneControlNetwork, CoefficientsAtHalfTurn)
{
    const auto k = published ({ 0.5, 0.5, 0.5 });
    const std::array<double, 3> b { 1.09125e-2, 3.63040625e-6, 5.5478125e-10 };
    const std::array<double, 3> a { 1.318375e-2, 1.518040625e-5, 9.1353125e-10 };
    for (std::size_t index = 0; index < 3; ++index)
    {
        EXPECT_NEAR (k.b[index] / b[index], 1.0, tolerance::algebra);
        EXPECT_NEAR (k.a[index] / a[index], 1.0, tolerance::algebra);
    }
}

TEST (ToneControlNetwork, FollowsItsTransferFunctionAtEverySetting)
{
    for (const double treble : { 0.1, 0.5, 0.9 })
        for (const double bass : { 0.05, 0.5, 0.9 })
            for (const double middle : { 0.3, 0.5, 0.8 })
            {
                const Controls controls { treble, bass, middle };
                const auto k = published (controls);
                EXPECT_LT (worstResponseError (
                               network (controls), [&k] (Complex s) { return k.at (s); }, 1.0, 200e3),
                           tolerance::transferFunction)
                    << treble << " " << bass << " " << middle;
            }
}

TEST (ToneControlNetwork, WorkedLevels)
{
    struct Row
    {
        Controls controls;
        std::array<double, 3> levels; ///< dB at 100 Hz, 1 kHz, 10 kHz
    };

    for (const auto& row : { Row { { 0.5, 0.5, 0.5 }, { -2.7957, -11.7494, -4.5920 } },
                             Row { { 0.1, 0.9, 0.3 }, { -2.4089, -15.0518, -13.0904 } },
                             Row { { 0.9, 0.05, 0.8 }, { -6.4789, -7.7066, -0.8729 } } })
    {
        const auto netlist = network (row.controls);
        const SmallSignal analysis (netlist);
        EXPECT_NEAR (responseDb (analysis, netlist, 100.0), row.levels[0], 6e-5);
        EXPECT_NEAR (responseDb (analysis, netlist, 1e3), row.levels[1], 6e-5);
        EXPECT_NEAR (responseDb (analysis, netlist, 10e3), row.levels[2], 6e-5);
    }
}

} // namespace
} // namespace stopwright

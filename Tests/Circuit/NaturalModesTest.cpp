// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NaturalModes.h"

#include "Circuit/ClosedForm.h"
#include "Circuit/NetlistSketch.h"
#include "Support/Tolerances.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace stopwright
{
namespace
{

TEST (NaturalModes, ModesSolveTheEquationsWithoutASource)
{
    const NodalEquations equations (NetlistSketch()
                                        .tap ("in", "in", 1e3)
                                        .inductor ("L1", "in", "t", 0.5, 90.0)
                                        .capacitor ("C1", "t", "0", 47e-9)
                                        .resistor ("R1", "t", "u", 10e3)
                                        .capacitor ("C2", "u", "0", 10e-9)
                                        .output ("u"));
    const auto modes = naturalModes (equations);
    ASSERT_EQ (modes.size(), 3U);
    for (const auto& mode : modes)
    {
        EXPECT_LT (mode.frequency.real(), 0.0);
        ExtendedComplexMatrix z (equations.size(), 1);
        for (Eigen::Index index = 0; index < z.rows(); ++index)
            z (index, 0) = ExtendedComplex (mode.solution[static_cast<std::size_t> (index)]);
        const ExtendedComplexMatrix left = equations.at (ExtendedComplex (mode.frequency)) * z;
        EXPECT_LT (static_cast<double> (left.cwiseAbs().maxCoeff()), tolerance::algebra);
    }
}

TEST (NaturalModes, RatesFarApartKeepTheirDigits)
{
    // Buffered sections from one per kilosecond to 10^10 per second; closed form -1/RC each.
    NetlistSketch sketch;
    sketch.tap ("in", "o0");
    const std::vector<double> farads { 1e-3, 1e-6, 1e-9, 1e-12, 1e-15 };
    const std::vector<double> ohms { 1e6, 1e4, 1e3, 1e3, 1e5 };
    for (std::size_t k = 0; k < farads.size(); ++k)
        sketch.resistor (numbered ("R", k), numbered ("o", k), numbered ("p", k), ohms[k])
            .capacitor (numbered ("C", k), numbered ("p", k), "0", farads[k])
            .opAmp (numbered ("U", k), numbered ("p", k), numbered ("o", k + 1), numbered ("o", k + 1));
    const auto modes = naturalModes (NodalEquations (sketch.output ("o5")));
    const std::vector<double> rates { -1e-3, -1e2, -1e6, -1e9, -1e10 };
    ASSERT_EQ (modes.size(), rates.size());
    for (std::size_t k = 0; k < rates.size(); ++k)
        EXPECT_LT (relativeError (modes[k].frequency, rates[k]), tolerance::transferFunction);
}

TEST (NaturalModes, ALosslessTankHasAnImaginaryPair)
{
    const NodalEquations equations (NetlistSketch()
                                        .tap ("in", "in")
                                        .capacitor ("C1", "in", "t", 22e-9)
                                        .inductor ("L1", "t", "0", 1.0)
                                        .output ("t"));
    const auto modes = naturalModes (equations);
    ASSERT_EQ (modes.size(), 2U);
    const std::complex<double> want (0.0, 1.0 / std::sqrt (22e-9));
    EXPECT_LT (relativeError (modes[0].frequency, want), tolerance::algebra);
    EXPECT_EQ (modes[1].frequency, std::conj (modes[0].frequency));
}

} // namespace
} // namespace stopwright

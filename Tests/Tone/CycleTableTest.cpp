// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/CycleTable.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stopwright
{

TEST (CycleTable, ReadsBackItsSeriesAtAnyPhase)
{
    std::vector<std::complex<double>> coefficients (600);
    coefficients[0] = { 0.6, 0.1 };
    coefficients[2] = { 0.0, -0.2 };
    coefficients[599] = { 1.0e-3, 0.0 };
    const CycleTable table (coefficients);

    std::vector<float> out (1000);
    const std::uint64_t start = 0xFEDCBA9876543210U;
    const std::uint64_t increment = 0x0123456789ABCDEFU;
    table.read (start, increment, 1000, out.data());

    std::uint64_t phase = start;
    for (const float sample : out)
    {
        const double turns = static_cast<double> (phase >> 11) * 0x1p-53;
        double expected = 0.0;
        for (const int n : { 1, 3, 600 })
            expected += std::imag (coefficients[static_cast<std::size_t> (n) - 1]
                                   * std::polar (1.0, 2.0 * std::numbers::pi * std::fmod (n * turns, 1.0)));

        ASSERT_NEAR (sample, expected, 4e-7);
        phase += increment;
    }
}

TEST (CycleTable, HoldsASingleHarmonic)
{
    const CycleTable table (std::vector<std::complex<double>> { { 1.0, 0.0 } });
    std::vector<float> out (4);
    table.read (0, std::uint64_t { 1 } << 62, 4, out.data());
    EXPECT_NEAR (out[0], 0.0F, 1e-7F);
    EXPECT_NEAR (out[1], 1.0F, 1e-7F);
    EXPECT_NEAR (out[3], -1.0F, 1e-7F);
}

} // namespace stopwright

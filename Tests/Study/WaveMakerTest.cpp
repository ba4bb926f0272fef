// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/WaveMaker.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright::test
{

using Complex = std::complex<double>;

TEST (WaveMaker, AFewPartialsAreTheirSum)
{
    constexpr std::size_t size = 4096;
    std::vector<Complex> spectrum (size);
    spectrum[1] = std::polar (2.0, 0.3);
    spectrum[5] = std::polar (0.5, -2.0);
    WaveMaker maker;
    const auto wave = maker.waveOf (spectrum);
    ASSERT_EQ (wave.size(), 2 * size);
    for (std::size_t index = 0; index < wave.size(); ++index)
    {
        const double angle = 2.0 * std::numbers::pi * static_cast<double> (index) / static_cast<double> (wave.size());
        EXPECT_NEAR (wave[index], 2.0 * std::sin (angle + 0.3) + 0.5 * std::sin (5.0 * angle - 2.0), 2e-5);
    }
}

// A square of +-1: flat, no overshoot, and 0.78 / size of a period is the deviation of the Gaussian its edges are.
TEST (WaveMaker, ASquareHasRoundEdgesAndDoesNotOvershoot)
{
    constexpr std::size_t size = 4096;
    std::vector<Complex> spectrum (size);
    for (std::size_t k = 1; k < size; k += 2)
        spectrum[k] = 4.0 / (std::numbers::pi * static_cast<double> (k));
    WaveMaker maker;
    const auto wave = maker.waveOf (spectrum);
    EXPECT_NEAR (std::ranges::max (wave), 1.0, 1e-6);
    EXPECT_NEAR (std::ranges::min (wave), -1.0, 1e-6);
    EXPECT_NEAR (wave[size / 2], 1.0, 1e-6);
    EXPECT_NEAR (wave[0], 0.0, 1e-9);
    const double sigmaPoints = std::sqrt (12.0 / 2.0) / std::numbers::pi * 2.0; // in points of 1 / (2 size)
    EXPECT_NEAR (sigmaPoints / 2.0, 0.78, 0.001);
    for (const std::size_t index : { 1U, 2U, 3U, 5U })
        EXPECT_NEAR (wave[index], std::erf (static_cast<double> (index) / (sigmaPoints * std::numbers::sqrt2)), 1e-5);
}

} // namespace stopwright::test

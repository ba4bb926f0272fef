// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/AmplitudeDistribution.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace stopwright::test
{

namespace
{

using Waves = std::vector<std::vector<double>>;

std::vector<double> sine (double peak)
{
    constexpr std::size_t points = 1U << 16U;
    std::vector<double> wave;
    for (std::size_t index = 0; index < points; ++index)
        wave.push_back (peak * std::sin (2.0 * std::numbers::pi * (static_cast<double> (index) + 0.5) / points));
    return wave;
}

std::vector<double> ramp (double peak)
{
    constexpr std::size_t points = 1U << 16U;
    std::vector<double> wave;
    for (std::size_t index = 0; index < points; ++index)
        wave.push_back (peak * (2.0 * (static_cast<double> (index) + 0.5) / points - 1.0));
    return wave;
}

} // namespace

// Ten independent two-level waves: binomial, 1/1024 for each end, 11/1024 at or above 8.
TEST (AmplitudeDistribution, TenSquaresAreBinomial)
{
    const AmplitudeDistribution ten (Waves (10, { -1.0, 1.0 }));
    EXPECT_DOUBLE_EQ (ten.highest(), 10.0);
    EXPECT_DOUBLE_EQ (ten.lowest(), -10.0);
    EXPECT_NEAR (ten.shareAbove (9.9), 1.0 / 1024.0, 1e-12);
    EXPECT_NEAR (ten.shareBelow (-9.9) + ten.shareAbove (9.9), 0.001953125, 1e-12); // 0.1953 % at full peak
    EXPECT_NEAR (ten.shareBelow (-7.9) + ten.shareAbove (7.9), 0.021484375, 1e-12); // 2.148 % at or above 8
    EXPECT_NEAR (ten.rms(), std::sqrt (10.0), 1e-6);
    EXPECT_NEAR (ten.meanMagnitude(), 2.4609375, 0.5 * ten.cellVolts()); // 10 C (9, 4) / 2^9
    EXPECT_EQ (ten.shareAbove (10.6), 0.0);
    EXPECT_NEAR (ten.shareAbove (-10.6), 1.0, 1e-12);
}

// Ten notes of eight stops at 0.3 V, were they all independent: 24 V, sqrt (80) 0.3 V, beyond 6 V 1.83 % of the time.
TEST (AmplitudeDistribution, EightySquares)
{
    const AmplitudeDistribution eighty (Waves (80, { -0.3, 0.3 }));
    EXPECT_NEAR (eighty.highest(), 24.0, 1e-9);
    EXPECT_NEAR (eighty.rms(), 2.683, 0.0005);
    EXPECT_NEAR (eighty.shareAbove (6.3) + eighty.shareBelow (-6.3), 0.0183, 0.00005);
}

TEST (AmplitudeDistribution, SineAndRampAreTheirClosedForms)
{
    const AmplitudeDistribution one (Waves { sine (2.0) });
    for (const double volts : { -1.5, 0.0, 0.5, 1.0, 1.9 })
        EXPECT_NEAR (one.shareAbove (volts), 0.5 - std::asin (volts / 2.0) / std::numbers::pi, 2e-4) << volts;
    EXPECT_NEAR (one.meanMagnitude(), 4.0 / std::numbers::pi, 1e-6);

    // Two even distributions of +-1: a triangle of +-2, of which (2 - v)^2 / 8 lies above v.
    const AmplitudeDistribution two (Waves { ramp (1.0), ramp (1.0) });
    for (const double volts : { 0.0, 0.5, 1.0, 1.5 })
        EXPECT_NEAR (two.shareAbove (volts), std::pow (2.0 - volts, 2) / 8.0, 1e-5) << volts;
}

TEST (AmplitudeDistribution, UseOfLimits)
{
    constexpr double none = std::numeric_limits<double>::infinity();
    const AmplitudeDistribution one (Waves { ramp (1.0) });
    // Above 0.9 and below -0.9 for 10 % of the time together.
    EXPECT_NEAR (one.useOf (-1.0, 1.0, 0.1), 0.9, 1e-4);
    EXPECT_NEAR (one.useOf (-2.0, 2.0, 0.1), 0.45, 1e-4);
    EXPECT_NEAR (one.useOf (-none, 1.0, 0.1), 0.8, 1e-4);
    EXPECT_NEAR (one.useOf (-4.0, 1.0, 0.1), 0.8, 1e-4); // the lower limit is never reached
    EXPECT_EQ (one.useOf (-none, none, 0.1), 0.0);
}

TEST (AmplitudeDistribution, NothingIsZeroForEver)
{
    const AmplitudeDistribution none (Waves {});
    EXPECT_EQ (none.rms(), 0.0);
    EXPECT_EQ (none.highest(), 0.0);
    EXPECT_NEAR (none.shareBelow (1.0), 1.0, 1e-12);
}

} // namespace stopwright::test

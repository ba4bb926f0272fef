// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ToneLevel.h"

#include "Organ/TestOrgan.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

namespace stopwright::test
{

namespace
{

/// Partials of a square of +-1 V up to 20 kHz.
std::vector<RailPartial> squareAt (double hz)
{
    std::vector<RailPartial> partials;
    for (int n = 1; n * hz <= 20000.0; n += 2)
        partials.push_back ({ static_cast<double> (n), n * hz, {}, 4.0 / (std::numbers::pi * n) });
    return partials;
}

} // namespace

// Fourier series of the square and the weighting of IEC 61672-1, summed to 20 kHz.
TEST (ToneLevel, AWeightedSquares)
{
    struct Value
    {
        double hz;
        double dbva;
    };

    for (const Value& value : { Value { 65.40639, -11.555 }, Value { 130.8128, -8.434 }, Value { 261.6256, -5.182 },
                                Value { 523.2511, -2.085 }, Value { 1046.502, 0.073 }, Value { 2093.005, 0.740 } })
        EXPECT_NEAR (toneLevelOf (squareAt (value.hz)).dbva(), value.dbva, 0.005) << value.hz;
}

TEST (ToneLevel, StrongestAndCentroid)
{
    const std::vector<RailPartial> partials { { 1.0, 100.0, {}, { 0.0, 1.0 } }, { 2.0, 200.0, {}, -3.0 } };
    const auto level = toneLevelOf (partials);
    EXPECT_DOUBLE_EQ (level.rmsVolts, std::sqrt (5.0)); // (1 + 9) / 2
    EXPECT_EQ (level.strongestHarmonic, 2.0);
    EXPECT_DOUBLE_EQ (level.strongestPeakVolts, 3.0);
    EXPECT_DOUBLE_EQ (level.centroidHz, 175.0);
    EXPECT_EQ (toneLevelOf ({}).dbv(), -std::numeric_limits<double>::infinity());
}

// Two coherent tones at an angle: 20 log |1 + e^(j angle)|.
TEST (ToneLevel, CoherentTonesAddAsPhasors)
{
    struct Value
    {
        double degrees;
        double db;
    };

    for (const Value& value : { Value { 0.0, 6.021 }, Value { 45.0, 5.333 }, Value { 90.0, 3.010 },
                                Value { 120.0, 0.0 }, Value { 150.0, -5.719 }, Value { 170.0, -15.173 } })
    {
        const std::vector<RailPartial> one { { 1.0, 220.0, {}, 1.0 } };
        const std::vector<RailPartial> other {
            { 1.0, 220.0, {}, std::polar (1.0, value.degrees * std::numbers::pi / 180.0) }
        };
        const std::vector<std::vector<RailPartial>> both { one, other };
        const auto sum = addTones (both);
        ASSERT_EQ (sum.size(), 1U);
        EXPECT_NEAR (toDecibels (std::abs (sum.front().volts)), value.db, 0.001) << value.degrees;
    }
}

} // namespace stopwright::test

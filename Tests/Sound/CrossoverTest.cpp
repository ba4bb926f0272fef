// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Crossover.h"

#include "Sound/TestTones.h"
#include "Support/Spectrum.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = 48000.0;
constexpr long long period = 4800; // 10 Hz a cycle

struct Halves
{
    std::complex<double> low;
    std::complex<double> high;
};

Halves responseOf (double crossingHz, long long cycles)
{
    Crossover crossover (crossingHz, rateHz);
    const auto in = sine (10 * period, cycles, period);
    std::vector<double> low (in.size());
    std::vector<double> high (in.size());
    crossover.process (in, low, high);
    const auto whole = bin (std::span (in).first (period), cycles);
    return { bin (std::span (low).last (period), cycles) / whole,
             bin (std::span (high).last (period), cycles) / whole };
}

TEST (Crossover, CrossesAtMinusSixDecibels)
{
    const auto halves = responseOf (800.0, 80);
    EXPECT_NEAR (toDecibels (std::abs (halves.low)), -6.0206, 1e-4); // each Butterworth half -3.01 dB, twice
    EXPECT_NEAR (toDecibels (std::abs (halves.high)), -6.0206, 1e-4);
}

TEST (Crossover, AddsToALevelAllPass)
{
    for (const long long cycles : { 2, 30, 79, 80, 81, 160, 1000, 2000 })
    {
        const auto halves = responseOf (800.0, cycles);
        const double ratio = std::tan (std::numbers::pi * static_cast<double> (cycles) / period)
                             / std::tan (std::numbers::pi * 800.0 / rateHz);
        const std::complex<double> s (0.0, ratio);
        const auto allPass =
            (1.0 - std::numbers::sqrt2 * s + s * s) / (1.0 + std::numbers::sqrt2 * s + s * s); // Linkwitz 1976
        EXPECT_LT (std::abs (halves.low + halves.high - allPass), 1e-9) << cycles;
    }
}

TEST (Crossover, FallsByTwentyFourDecibelsAnOctave)
{
    const double lower = toDecibels (std::abs (responseOf (3200.0, 20).high));
    const double upper = toDecibels (std::abs (responseOf (3200.0, 40).high));
    EXPECT_NEAR (upper - lower, 24.08, 0.05);
}

TEST (Crossover, WorksInPlaceAndGoesOnFromAnother)
{
    Random random (54);
    const auto in = noise (500, 1.0, random);
    Crossover crossover (800.0, rateHz);
    std::vector<double> low (in.size()), high (in.size());
    crossover.process (in, low, high);

    Crossover same (800.0, rateHz);
    auto inPlace = in;
    std::vector<double> otherHigh (in.size());
    same.process (inPlace, inPlace, otherHigh);
    EXPECT_EQ (inPlace, low);
    EXPECT_EQ (otherHigh, high);

    Crossover next (800.0, rateHz);
    next.copyStateFrom (crossover);
    std::vector<double> nextLow (in.size()), nextHigh (in.size());
    next.process (in, nextLow, nextHigh);
    EXPECT_NE (nextLow, low);
    next.reset();
    next.process (in, nextLow, nextHigh);
    EXPECT_EQ (nextLow, low);
    EXPECT_EQ (nextHigh, high);
}

TEST (Crossover, RefusesWhatLiesTooHigh)
{
    EXPECT_THROW (Crossover (22000.0, rateHz), Error);
    EXPECT_THROW (Crossover (0.0, rateHz), Error);
    EXPECT_NO_THROW (Crossover (800.0, 8000.0));
}

} // namespace
} // namespace stopwright

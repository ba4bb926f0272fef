// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/OnePole.h"

#include "Sound/TestTones.h"
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = 192000.0;
constexpr long long period = 19200;

/// Response to a settled sine of whole cycles.
template <typename Filter>
std::complex<double> responseOf (long long cycles, Filter filter)
{
    auto samples = sine (20 * period, cycles, period);
    const auto in = bin (std::span (samples).first (period), cycles);
    filter (std::span<double> (samples));
    return bin (std::span (samples).last (period), cycles) / in;
}

// H_digital (w) = H_analogue (j 2 fs tan (w / 2)), closed form.
TEST (OnePole, IsTheAnalogueFilterAtTheWarpedFrequency)
{
    for (const double cornerHz : { 33.863, 720.0, 20000.0, 500000.0 })
        for (const long long cycles : { 2, 100, 1000, 4000, 9000 })
        {
            const double angle = 2.0 * std::numbers::pi * static_cast<double> (cycles) / period;
            const std::complex<double> s (0.0, 2.0 * rateHz * std::tan (0.5 * angle));
            const std::complex<double> low = 1.0 / (1.0 + s / (2.0 * std::numbers::pi * cornerHz));
            const auto lowpass = [&] (std::span<double> volts) { OnePole (cornerHz, rateHz).lowpass (volts); };
            const auto highpass = [&] (std::span<double> volts) { OnePole (cornerHz, rateHz).highpass (volts); };
            EXPECT_LT (std::abs (responseOf (cycles, lowpass) - low), tolerance::discretisation);
            EXPECT_LT (std::abs (responseOf (cycles, highpass) - (1.0 - low)), tolerance::discretisation);
        }
}

// 47 k and 100 n against a steady volt: exp (-t / RC), closed form.
TEST (OnePole, DischargesAsACapacitorDoes)
{
    constexpr double seconds = 47e3 * 100e-9;
    OnePole pole (1.0 / (2.0 * std::numbers::pi * seconds), rateHz);
    std::vector<double> volts (2000, 1.0);
    volts[0] = 0.5; // the step lies half way through the first interval
    pole.highpass (volts);
    for (std::size_t i = 100; i < volts.size(); i += 300)
        EXPECT_NEAR (volts[i], std::exp (-static_cast<double> (i) / (rateHz * seconds)), 1e-6) << i;
}

TEST (OnePole, KeepsItsChargeForAnotherCorner)
{
    OnePole pole (100.0, rateHz);
    std::vector<double> volts (100000, 2.0);
    pole.lowpass (volts);
    OnePole other (1000.0, rateHz);
    other.copyStateFrom (pole);
    std::vector<double> next (1, 2.0);
    other.lowpass (next);
    EXPECT_NEAR (next[0], 2.0, 1e-12);
    other.reset();
    std::vector<double> silence (10, 0.0);
    other.lowpass (silence);
    EXPECT_EQ (silence, std::vector<double> (10, 0.0));
}

} // namespace
} // namespace stopwright

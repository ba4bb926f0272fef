// SPDX-License-Identifier: GPL-3.0-or-later
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double twoPi = 2.0 * std::numbers::pi;

/// offset + amplitude cos (2 pi cycles i / length + phase)
std::vector<double> cosine (std::size_t length, double cycles, double amplitude, double phase, double offset = 0.0)
{
    std::vector<double> samples (length);
    for (std::size_t i = 0; i < length; ++i)
        samples[i] =
            offset
            + amplitude * std::cos (twoPi * cycles * static_cast<double> (i) / static_cast<double> (length) + phase);
    return samples;
}

} // namespace

TEST (Spectrum, ReadsPeakAmplitudeAndPhase)
{
    // An odd length with large primes, and a power of two.
    for (const std::size_t length : { std::size_t (1009 * 3), std::size_t (4096) })
    {
        const auto samples = cosine (length, 17.0, 0.3, 0.7, -2.0);
        const auto bins = spectrum (samples);
        ASSERT_EQ (bins.size(), length / 2 + 1);
        EXPECT_NEAR (bins[0].real(), -2.0, tolerance::algebra);
        EXPECT_NEAR (std::abs (bins[17] - std::polar (0.3, 0.7)), 0.0, tolerance::algebra);
        EXPECT_NEAR (amplitudes (samples)[16], 0.0, tolerance::algebra);
        EXPECT_NEAR (std::abs (bin (samples, 17) - std::polar (0.3, 0.7)), 0.0, tolerance::algebra);
        EXPECT_NEAR (std::abs (bin (samples, 0) + 2.0), 0.0, tolerance::algebra);
    }
}

TEST (Spectrum, CountsTheHighestBinOfAnEvenLengthOnce)
{
    const auto samples = cosine (64, 32.0, 0.5, 0.0);
    EXPECT_NEAR (amplitudes (samples)[32], 0.5, tolerance::algebra);
    EXPECT_NEAR (std::abs (bin (samples, 32)), 0.5, tolerance::algebra);
}

TEST (Spectrum, SmearsWhatDoesNotRepeat)
{
    const auto samples = cosine (4096, 17.5, 1.0, 0.0);
    EXPECT_LT (amplitudes (samples)[17], 0.7) << "half a cycle off, a bin reads 2 / pi";
}

TEST (Spectrum, WindowedPartialReadsAnyFrequency)
{
    constexpr double sampleRateHz = 48000.0;
    constexpr std::size_t length = 48000;
    auto samples = cosine (length, 261.6255653, 1.0, 0.4);
    const auto partial = cosine (length, 523.2511306, 0.001, 1.1);
    for (std::size_t i = 0; i < length; ++i)
        samples[i] += partial[i];

    const auto strong = windowedPartial (samples, 261.6255653, sampleRateHz);
    const auto weak = windowedPartial (samples, 523.2511306, sampleRateHz);
    EXPECT_NEAR (std::abs (strong - std::polar (1.0, 0.4)), 0.0, 1e-6);
    EXPECT_NEAR (std::abs (weak - std::polar (0.001, 1.1)), 0.0, 1e-6) << "-60 dB beside a strong one, to 0.01 dB";
    EXPECT_LT (std::abs (windowedPartial (samples, 400.0, sampleRateHz)), 1e-5);
}

} // namespace stopwright

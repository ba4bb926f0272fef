// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/FractionalKernel.h"

#include "Support/Random.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace stopwright
{
namespace
{

/// Largest error in reading a sine of peak 1 at places anywhere, dB.
double errorDb (double rateHz, double frequencyHz, Random& random)
{
    const FractionalKernel kernel (rateHz);
    std::vector<double> window (2 * static_cast<std::size_t> (kernel.reach()));
    double worst = 0.0;
    for (int trial = 0; trial < 400; ++trial)
    {
        const double turn = 2.0 * std::numbers::pi * frequencyHz / rateHz;
        const double phase = random.uniform (0.0, 6.3);
        for (std::size_t i = 0; i < window.size(); ++i)
            window[i] = std::sin (turn * (static_cast<double> (i) - kernel.reach()) + phase);
        const double fraction = trial == 0 ? 0.0 : random.uniform (0.0, 1.0);
        worst = std::max (worst, std::abs (kernel.read (window.data(), fraction) - std::sin (phase - turn * fraction)));
    }
    return toDecibels (worst);
}

// Asked for: 80 dB.
TEST (FractionalKernel, ReadsSinesUpToTwentyKilohertz)
{
    Random random (61);
    for (const double rateHz : { 44100.0, 48000.0, 96000.0, 192000.0 })
        for (const double frequencyHz : { 50.0, 1000.0, 5000.0, 12000.0, 20000.0 })
            EXPECT_LT (errorDb (rateHz, frequencyHz, random), -86.0) << frequencyHz << " of " << rateHz;
    EXPECT_LT (errorDb (8000.0, 3500.0, random), -86.0);
}

// The twin: beyond its band it errs.
TEST (FractionalKernel, DoesNotReadWhatLiesAboveItsBand)
{
    Random random (62);
    EXPECT_GT (errorDb (44100.0, 21900.0, random), -20.0);
}

TEST (FractionalKernel, ReadsASteadyValueAsItIs)
{
    const FractionalKernel kernel (48000.0);
    const std::vector<double> window (2 * static_cast<std::size_t> (kernel.reach()), 0.7);
    for (const double fraction : { 0.0, 0.001, 0.5, 0.9999999 })
        EXPECT_NEAR (kernel.read (window.data(), fraction), 0.7, 1e-14) << fraction;
}

} // namespace
} // namespace stopwright

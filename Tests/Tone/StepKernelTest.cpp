// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/StepKernel.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

float stepAt (const StepKernel& kernel, int row, int tap)
{
    return kernel.stepRows()[row * 2 * kernel.taps() + tap];
}

float rampAt (const StepKernel& kernel, int row, int tap)
{
    return kernel.rampRows()[row * 2 * kernel.taps() + tap];
}

} // namespace

// Source: length by Kaiser 1974, (A - 8) = 2.285 T dw, whole eights; beta = 0.1102 (A - 8.7).
TEST (StepKernel, LengthFollowsTheRate)
{
    EXPECT_EQ (StepKernel (192000.0).taps(), 16);
    EXPECT_EQ (StepKernel (176400.0).taps(), 16);
    EXPECT_EQ (StepKernel (96000.0).taps(), 16);
    EXPECT_EQ (StepKernel (48000.0).taps(), 56);
    EXPECT_EQ (StepKernel (44100.0).taps(), 104);
    EXPECT_NEAR (StepKernel (96000.0).beta(), 14.69, 0.02);
    EXPECT_EQ (StepKernel (192000.0).delayFrames(), 8);
}

TEST (StepKernel, ResidualsAreOddAndEvenAboutTheEdge)
{
    const StepKernel kernel (192000.0);
    const int taps = kernel.taps();

    // Tap k of row r and tap T - 1 - k of row P - r lie equally far from the edge, on its two sides.
    for (int row = 1; row < StepKernel::phases; row += 7)
        for (int tap = 0; tap < taps; ++tap)
        {
            EXPECT_NEAR (stepAt (kernel, row, tap), -stepAt (kernel, StepKernel::phases - row, taps - 1 - tap), 1e-7F);
            EXPECT_NEAR (rampAt (kernel, row, tap), rampAt (kernel, StepKernel::phases - row, taps - 1 - tap), 1e-7F);
        }
}

TEST (StepKernel, EndsInNothing)
{
    const StepKernel kernel (192000.0);
    EXPECT_NEAR (stepAt (kernel, 0, kernel.taps() - 1), 0.0F, 1e-9F);
    EXPECT_NEAR (rampAt (kernel, 0, kernel.taps() - 1), 0.0F, 1e-9F);
    EXPECT_NEAR (stepAt (kernel, 0, kernel.taps() / 2 - 1), 0.5F, 1e-7F) << "right at the edge";
}

TEST (StepKernel, DifferencesLeadToTheNextRow)
{
    const StepKernel kernel (192000.0);
    const int taps = kernel.taps();
    for (int row = 0; row + 1 < StepKernel::phases; ++row)
        for (int tap = 0; tap < taps; ++tap)
            EXPECT_NEAR (stepAt (kernel, row, tap) + stepAt (kernel, row, taps + tap), stepAt (kernel, row + 1, tap),
                         1.2e-7F);
}

// The transform of the kernel: 1 in the audible band, nothing from where it would fold back into it.
TEST (StepKernel, PassesTheAudibleBandAndStopsItsImages)
{
    for (const double rateHz : { 44100.0, 48000.0, 96000.0, 192000.0 })
    {
        const StepKernel kernel (rateHz);

        // Differences of the finely sampled step are the kernel; row r, tap k stands at 1 + k - T/2 - r/P.
        const auto gainDb = [&] (double hz)
        {
            const double w = 2.0 * std::numbers::pi * hz / rateHz;
            double real = 0.0;
            double imaginary = 0.0;
            for (int tap = 0; tap < kernel.taps(); ++tap)
                for (int row = 0; row < StepKernel::phases; ++row)
                {
                    const double t = 0.5 + tap - 0.5 * kernel.taps() + 0.5 - (row + 0.5) / StepKernel::phases;
                    const double h =
                        -static_cast<double> (kernel.stepRows()[row * 2 * kernel.taps() + kernel.taps() + tap]);
                    real += h * std::cos (w * t);
                    imaginary += h * std::sin (w * t);
                }
            return 20.0 * std::log10 (std::hypot (real, imaginary));
        };

        EXPECT_NEAR (gainDb (1000.0), 0.0, 1e-4) << rateHz;
        EXPECT_NEAR (gainDb (20000.0), 0.0, 1e-4) << rateHz;
        EXPECT_NEAR (gainDb (0.5 * rateHz), -6.02, 0.01) << rateHz;
        EXPECT_LT (gainDb (rateHz - 20000.0), -125.0) << rateHz;
    }
}

} // namespace stopwright

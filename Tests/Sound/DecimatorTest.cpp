// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Decimator.h"

#include "Sound/StreamSpec.h"
#include "Support/Random.h"
#include "Support/Spectrum.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <cstddef>
#include <numbers>
#include <vector>

namespace stopwright
{
namespace
{

constexpr double flatDb = 0.001;
constexpr double aliasDb = -130.0;

struct Rate
{
    double deviceHz;
    double highestHeardHz;
};

// Below 44.1 kHz the edge lies at the same part of the rate as 20 kHz does there.
const std::vector<Rate> rates { { 44100, 20000 }, { 48000, 20000 }, { 88200, 20000 },
                                { 96000, 20000 }, { 22050, 9990 },  { 8000, 3620 } };

std::vector<double> decimated (const std::vector<double>& in, double deviceHz, int factor)
{
    const auto frames = in.size() / static_cast<std::size_t> (factor);
    std::vector<double> out (frames);
    Decimator decimator (deviceHz, factor, static_cast<int> (frames));
    decimator.process (in, out);
    return out;
}

/// Peak amplitude at the output of a sine of peak 1 at the input, whole cycles, after the filter has filled.
std::vector<double> sine (double cyclesPerSample, std::size_t length)
{
    std::vector<double> samples (length);
    for (std::size_t i = 0; i < length; ++i)
        samples[i] = std::sin (2.0 * std::numbers::pi * std::fmod (cyclesPerSample * static_cast<double> (i), 1.0));
    return samples;
}

double settledPeak (const std::vector<double>& out, double deviceHz, double frequencyHz)
{
    const auto settled = std::span (out).subspan (out.size() / 4);
    return std::abs (windowedPartial (settled, frequencyHz, deviceHz));
}

TEST (Decimator, IsFlatToTwentyKilohertz)
{
    for (const auto& [deviceHz, highestHz] : rates)
    {
        const int factor = internalFactor ({ .deviceRateHz = deviceHz });
        const double rateHz = deviceHz * factor;
        for (const double part : { 0.005, 0.05, 0.3, 0.7, 0.9, 0.99, 1.0 })
        {
            const double frequencyHz = part * highestHz;
            const auto out =
                decimated (sine (frequencyHz / rateHz, 4096 * static_cast<std::size_t> (factor)), deviceHz, factor);
            EXPECT_NEAR (toDecibels (settledPeak (out, deviceHz, frequencyHz)), 0.0, flatDb)
                << frequencyHz << " of " << deviceHz;
        }
    }
}

TEST (Decimator, LetsNothingFoldIntoHearing)
{
    Random random (20);
    for (const auto& [deviceHz, highestHz] : rates)
    {
        const int factor = internalFactor ({ .deviceRateHz = deviceHz });
        const double rateHz = deviceHz * factor;
        for (int trial = 0; trial < 60; ++trial)
        {
            // What the output hears at heardHz came in on one side or other of a multiple of the device's rate.
            const double heardHz = trial == 0 ? highestHz : random.uniform (20.0, highestHz);
            const double side = trial == 0 || random.chance (0.5) ? -1.0 : 1.0;
            const double imageHz = deviceHz * random.integer (1, factor / 2) + side * heardHz;
            const auto in = sine (imageHz / rateHz, 4096 * static_cast<std::size_t> (factor));
            const auto out = decimated (in, deviceHz, factor);
            const auto settled = std::span (out).subspan (out.size() / 4);
            double peak = 0.0;
            for (const double sample : settled)
                peak = std::max (peak, std::abs (sample));
            EXPECT_LT (toDecibels (peak), aliasDb) << imageHz << " Hz at " << deviceHz;
        }
    }
}

// The twin of the test above: what is not kept out of the transition band is there to be seen.
TEST (Decimator, ShowsWhatIsAboveTheDeviceRateLess)
{
    const auto out = decimated (sine (24500.0 / 192000.0, 16384), 48000.0, 4);
    EXPECT_GT (settledPeak (out, 48000.0, 23500.0), 0.1);
}

TEST (Decimator, DelaysByWholeFrames)
{
    for (const auto& [deviceHz, highestHz] : rates)
    {
        const int factor = internalFactor ({ .deviceRateHz = deviceHz });
        const double frequencyHz = 0.1 * highestHz;
        const auto in = sine (frequencyHz / (deviceHz * factor), 4096 * static_cast<std::size_t> (factor));
        const auto out = decimated (in, deviceHz, factor);
        const auto delay = static_cast<std::size_t> (Decimator (deviceHz, factor, 1).delayFrames());
        for (std::size_t frame = 3 * delay; frame < out.size(); ++frame)
            ASSERT_NEAR (out[frame], in[(frame - delay) * static_cast<std::size_t> (factor)], 1e-4)
                << deviceHz << " " << frame;
    }
}

TEST (Decimator, DoesNotCareHowTheStreamIsCut)
{
    Random random (4);
    std::vector<double> in (12000);
    for (double& sample : in)
        sample = random.uniform (-1.0, 1.0);
    const auto whole = decimated (in, 48000.0, 4);

    Decimator decimator (48000.0, 4, 64);
    std::vector<double> pieces (whole.size());
    for (std::size_t start = 0; start < pieces.size();)
    {
        const auto count =
            std::min<std::size_t> (static_cast<std::size_t> (random.integer (0, 64)), pieces.size() - start);
        decimator.process (std::span (in).subspan (4 * start, 4 * count), std::span (pieces).subspan (start, count));
        start += count;
    }
    EXPECT_EQ (pieces, whole); // to the last bit
}

TEST (Decimator, PassesThroughAtFactorOne)
{
    const std::vector<double> in { 1.0, -2.0, 3.0 };
    EXPECT_EQ (decimated (in, 192000.0, 1), in);
    EXPECT_EQ (Decimator (192000.0, 1, 1).delayFrames(), 0);
}

TEST (Decimator, ForgetsOnResetAndGoesOnFromAnother)
{
    const std::vector<double> in = sine (0.01, 512);
    std::vector<double> first (128), fresh (128), next (128), taken (128);
    Decimator decimator (48000.0, 4, 128);
    decimator.process (in, first);

    Decimator other (48000.0, 4, 128);
    ASSERT_TRUE (other.isLike (decimator));
    other.copyStateFrom (decimator);
    decimator.process (in, next);
    other.process (in, taken);
    EXPECT_EQ (taken, next);
    EXPECT_NE (taken, first);

    decimator.reset();
    decimator.process (in, fresh);
    EXPECT_EQ (fresh, first);
    EXPECT_FALSE (other.isLike (Decimator (44100.0, 4, 128)));
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/ListeningStage.h"

#include "Support/Random.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

namespace stopwright
{
namespace
{

constexpr double rateHz = 48000.0;
constexpr double levelDb = -30.0;

std::vector<float> played (ListeningStage& stage, const std::vector<double>& in)
{
    std::vector<float> out (in.size(), 99.0F);
    stage.process (in, out);
    return out;
}

std::vector<double> sine (double frequencyHz, double amplitude, std::size_t length)
{
    std::vector<double> samples (length);
    for (std::size_t i = 0; i < length; ++i)
        samples[i] = amplitude * std::sin (2.0 * std::numbers::pi * frequencyHz / rateHz * static_cast<double> (i));
    return samples;
}

double peakOf (std::span<const float> samples)
{
    float peak = 0.0F;
    for (const float sample : samples)
        peak = std::max (peak, std::abs (sample));
    return static_cast<double> (peak);
}

const double ceiling = static_cast<double> (static_cast<float> (fromDecibels (ListeningStage::ceilingDb)));

/// A stage that has faded in.
ListeningStage openStage (double level = levelDb)
{
    ListeningStage stage (rateHz, level);
    played (stage, std::vector<double> (24000, 0.0));
    return stage;
}

TEST (ListeningStage, PlaysAtItsLevel)
{
    auto stage = openStage();
    const auto out = played (stage, std::vector<double> (4800, 1.0));
    EXPECT_NEAR (toDecibels (static_cast<double> (out.back())), levelDb, 0.001);
}

TEST (ListeningStage, DelaysByItsLookAhead)
{
    auto stage = openStage();
    std::vector<double> click (480, 0.0);
    click[0] = 1.0;
    const auto out = played (stage, click);
    const auto delay = static_cast<std::size_t> (std::lround (stage.latencySeconds() * rateHz));
    EXPECT_EQ (std::max_element (out.begin(), out.end()) - out.begin(), static_cast<std::ptrdiff_t> (delay));
    EXPECT_NEAR (static_cast<double> (out[delay]), fromDecibels (levelDb), 1e-6);
}

TEST (ListeningStage, FadesInFromSilence)
{
    ListeningStage stage (rateHz, levelDb);
    const auto out = played (stage, std::vector<double> (24000, 1.0));
    const double whole = fromDecibels (levelDb);
    EXPECT_LT (static_cast<double> (out[static_cast<std::size_t> (0.05 * rateHz)]), 0.01 * whole);
    EXPECT_GT (static_cast<double> (out[static_cast<std::size_t> (0.25 * rateHz)]), 0.99 * whole);
}

/// Sample i of one of six signals that no card should make.
double nastySample (int kind, std::size_t i, Random& random)
{
    switch (kind)
    {
        case 0:
            return 1e9 * random.uniform (-1.0, 1.0);
        case 1:
            return i % 977 == 0 ? 1e11 : 1e-3;
        case 2:
            return i % 2 == 0 ? 1e6 : -1e6;
        case 3:
            return std::exp (static_cast<double> (i) * 5e-4) * (i % 3 == 0 ? -1.0 : 1.0);
        case 4:
            return random.logUniform (1e-9, 1e11);
        default:
            return i / 4800 % 2 == 0 ? 0.0 : 40.0;
    }
}

TEST (ListeningStage, NeverLetsASampleOverTheCeiling)
{
    Random random (3);
    for (const double level : { -10.0, -30.0, -80.0 })
        for (int kind = 0; kind < 6; ++kind)
        {
            auto stage = openStage (level);
            std::vector<double> nasty (48000);
            for (std::size_t i = 0; i < nasty.size(); ++i)
                nasty[i] = nastySample (kind, i, random);
            EXPECT_LE (peakOf (played (stage, nasty)), ceiling) << "kind " << kind << " level " << level;
            EXPECT_FALSE (stage.isSilenced());
        }
}

TEST (ListeningStage, GainNeverRisesFasterThanSixDecibelsInTwentyMilliseconds)
{
    // A steady tone much too loud that goes quiet at once, with the level turned up in between: the gain is out / in.
    auto stage = openStage();
    std::vector<double> in (96000, 1.0);
    std::fill (in.begin(), in.begin() + 24000, 5000.0);
    std::vector<float> out (in.size());
    stage.process (std::span (in).first (30000), std::span (out).first (30000));
    stage.setLevelDb (-10.0);
    stage.process (std::span (in).subspan (30000), std::span (out).subspan (30000));

    const auto delay = static_cast<std::size_t> (std::lround (stage.latencySeconds() * rateHz));
    const auto gain = [&] (std::size_t frame) { return static_cast<double> (out[frame]) / in[frame - delay]; };
    double steepest = 0.0;
    for (std::size_t frame = delay; frame + 960 < out.size(); ++frame)
        steepest = std::max (steepest, toDecibels (gain (frame + 960) / gain (frame)));
    EXPECT_LE (steepest, 6.001);
    EXPECT_GT (steepest, 1.0); // or nothing was measured
}

TEST (ListeningStage, LimitsWithoutClipping)
{
    // The twin of the ceiling: a clipper would hold it too. At steady overload the limiter leaves a sine a sine.
    auto stage = openStage (-10.0);
    const auto out = played (stage, sine (1000.0, 20.0, 96000));
    const double settledPeak = peakOf (std::span (out).subspan (48000));
    std::size_t atCeiling = 0;
    for (std::size_t i = 48000; i < out.size(); ++i)
        if (static_cast<double> (std::abs (out[i])) > 0.99 * settledPeak)
            ++atCeiling;
    EXPECT_LT (atCeiling, 48000 / 8); // of a sine: arccos 0.99 / (pi / 2) = 9 %
}

TEST (ListeningStage, PullsDownWhatStaysLoud)
{
    auto stage = openStage (-10.0);
    const auto out = played (stage, std::vector<double> (240000, 3.0)); // -0.5 dB re full scale without it
    EXPECT_NEAR (toDecibels (static_cast<double> (out.back())), LoudnessCeiling::ceilingDb, 0.05);
    EXPECT_GT (stage.takeReductionDb(), 2.0);
}

TEST (ListeningStage, GoesSilentAtOnceOnAFault)
{
    for (const double bad : { std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                              -std::numeric_limits<double>::infinity(), 1e13 })
    {
        auto stage = openStage();
        played (stage, std::vector<double> (4800, 1.0));
        std::vector<double> in (480, 1.0);
        in[100] = bad;
        const auto out = played (stage, in);
        EXPECT_NE (out[99], 0.0F);
        EXPECT_EQ (peakOf (std::span (out).subspan (100)), 0.0);
        EXPECT_TRUE (stage.isSilenced());
        EXPECT_EQ (peakOf (played (stage, std::vector<double> (48000, 1.0))), 0.0); // and stays so
    }
}

TEST (ListeningStage, ComesBackWithAFadeAfterAFault)
{
    auto stage = openStage();
    stage.silence();
    stage.resume();
    const auto out = played (stage, std::vector<double> (24000, 1.0));
    EXPECT_LT (static_cast<double> (out[2400]), 0.01 * fromDecibels (levelDb));
    EXPECT_NEAR (static_cast<double> (out.back()), fromDecibels (levelDb), 1e-4);
}

TEST (ListeningStage, RunsToItsLevelWithoutAStep)
{
    auto stage = openStage();
    played (stage, std::vector<double> (4800, 1.0));
    stage.setLevelDb (-60.0);
    const auto out = played (stage, std::vector<double> (9600, 1.0));
    EXPECT_NEAR (toDecibels (static_cast<double> (out.back())), -60.0, 0.001);
    for (std::size_t i = 1; i < out.size(); ++i)
        ASSERT_LT (std::abs (toDecibels (static_cast<double> (out[i] / out[i - 1]))), 0.01);
}

TEST (ListeningStage, DoesNotCareHowTheStreamIsCut)
{
    Random random (8);
    std::vector<double> in (9000);
    for (double& sample : in)
        sample = random.uniform (-60.0, 60.0);
    ListeningStage whole (rateHz, levelDb), cut (rateHz, levelDb);
    const auto expected = played (whole, in);
    std::vector<float> out (in.size());
    for (std::size_t start = 0; start < in.size();)
    {
        const auto count =
            std::min<std::size_t> (static_cast<std::size_t> (random.integer (1, 100)), in.size() - start);
        cut.process (std::span (in).subspan (start, count), std::span (out).subspan (start, count));
        start += count;
    }
    EXPECT_EQ (out, expected);
}

TEST (ListeningStage, IsAsFreshAfterReset)
{
    ListeningStage fresh (rateHz, levelDb);
    auto used = openStage();
    played (used, std::vector<double> (4800, 1e6));
    used.reset();
    const auto in = sine (440.0, 2.0, 9600);
    EXPECT_EQ (played (used, in), played (fresh, in));
}

TEST (ListeningStage, PutsOutNoSubnormals)
{
    auto stage = openStage();
    const auto out = played (stage, std::vector<double> (4800, 1e-39));
    for (const float sample : out)
        ASSERT_TRUE (sample == 0.0F || std::isnormal (sample));
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/OfflineRender.h"

#include "Sound/TestCards.h"
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stopwright
{
namespace
{

using namespace test;

std::vector<double> rendered (const Card& card, const RenderRequest& request)
{
    std::vector<double> samples;
    EXPECT_TRUE (renderOffline (card, keySourceForCardAlone (card), request,
                                [&] (std::span<const float> block)
                                { samples.insert (samples.end(), block.begin(), block.end()); }));
    return samples;
}

TEST (OfflineRender, HasTheLengthOfThePhrase)
{
    for (const double rateHz : { 44100.0, 48000.0, 96000.0, 192000.0 })
        for (const auto scale : { RenderScale::volts, RenderScale::listening })
            EXPECT_EQ (rendered (plainCard(), { heldKeys ({ 60 }, 0.25), rateHz, scale }).size(),
                       static_cast<std::size_t> (0.25 * rateHz));
    EXPECT_TRUE (rendered (plainCard(), {}).empty());
}

TEST (OfflineRender, WritesVolts)
{
    const auto samples = rendered (plainCard(), { heldKeys ({ 69 }, 1.0), 48000.0, RenderScale::volts });
    const auto steady = std::span (samples).subspan (12000, 33600);
    EXPECT_NEAR (toDecibels (std::abs (windowedPartial (steady, 440.0, 48000.0)) * std::numbers::pi / 2.0), 0.0,
                 tolerance::runtimeDb);
}

TEST (OfflineRender, BeginsWithTheFirstKeyAndNotLate)
{
    for (const auto scale : { RenderScale::volts, RenderScale::listening })
    {
        Phrase phrase { .keys = { { 0.1, 60, true } }, .seconds = 0.3 };
        const auto samples = rendered (plainCard(), { phrase, 48000.0, scale });
        const double peak = peakOf (samples);
        EXPECT_LT (peakOf (std::span (samples).first (4800 - 32)), 1e-3 * peak); // the filter rings a little before
        EXPECT_GT (peakOf (std::span (samples).subspan (4800, 300)), 0.5 * peak);
    }
}

TEST (OfflineRender, ListensAtTheStartLevel)
{
    const auto samples = rendered (plainCard(), { heldKeys ({ 60 }, 2.0), 48000.0, RenderScale::listening });
    EXPECT_NEAR (toDecibels (rmsOf (std::span (samples).subspan (24000, 48000))), -30.0, tolerance::audibleDb);
}

TEST (OfflineRender, TakesKeysInAnyOrder)
{
    Phrase sorted { .keys = { { 0.0, 60, true }, { 0.1, 64, true }, { 0.2, 60, false } }, .seconds = 0.3 };
    Phrase mixed { .keys = { { 0.2, 60, false }, { 0.1, 64, true }, { 0.0, 60, true } }, .seconds = 0.3 };
    EXPECT_EQ (rendered (plainCard(), { sorted, 48000.0 }), rendered (plainCard(), { mixed, 48000.0 }));
}

TEST (OfflineRender, ReportsProgressAndStops)
{
    double last = -1.0;
    std::size_t frames = 0;
    const auto sink = [&] (std::span<const float> block) { frames += block.size(); };
    const RenderRequest request { heldKeys ({ 60 }, 1.0), 48000.0, RenderScale::volts };
    EXPECT_TRUE (renderOffline (plainCard(), keySourceForCardAlone (plainCard()), request, sink,
                                [&] (double part)
                                {
                                    EXPECT_GE (part, last);
                                    last = part;
                                    return true;
                                }));
    EXPECT_EQ (last, 1.0);
    EXPECT_EQ (frames, 48000U);

    frames = 0;
    EXPECT_FALSE (renderOffline (plainCard(), keySourceForCardAlone (plainCard()), request, sink,
                                 [] (double part) { return part < 0.5; }));
    EXPECT_LT (frames, 26000U);
}

TEST (OfflineRender, RefusesInASentence)
{
    Card unsound = plainCard();
    unsound.output = "nowhere";
    const auto nothing = [] (std::span<const float>) {};
    EXPECT_THROW (renderOffline (unsound, keySourceForCardAlone (unsound), {}, nothing), Error);

    const RenderRequest impossible { heldKeys ({ 60 }, 1.0), 0.0, RenderScale::volts };
    EXPECT_THROW (renderOffline (plainCard(), keySourceForCardAlone (plainCard()), impossible, nothing), Error);
}

} // namespace
} // namespace stopwright

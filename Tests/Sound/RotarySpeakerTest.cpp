// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RotarySpeaker.h"

#include "Sound/TestCards.h"
#include "Sound/TestTones.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = 48000.0;

/// Full turns in what is heard of a steady level, by the passings of its middle on the way up. Steady means the drum.
int turnsHeard (RotarySpeaker& speaker, double seconds)
{
    const auto heard = throughWhole (speaker, std::vector<double> (static_cast<std::size_t> (seconds * rateHz), 1.0));
    int passings = 0;
    for (std::size_t i = 1; i < heard.size(); ++i)
        passings += heard[i - 1] < 0.9 && heard[i] >= 0.9 ? 1 : 0;
    return passings;
}

TEST (RotarySpeaker, TurnsSlowlyAndFast)
{
    RotarySpeaker speaker ({}, false, rateHz);
    turnsHeard (speaker, 0.1);
    EXPECT_NEAR (turnsHeard (speaker, 30.0), 20, 1); // 40 a minute
    speaker.setFast (true);
    turnsHeard (speaker, 15.0);
    EXPECT_NEAR (turnsHeard (speaker, 10.0), 57, 1); // 342 a minute
    speaker.setFast (false);
    turnsHeard (speaker, 20.0);
    EXPECT_NEAR (turnsHeard (speaker, 30.0), 20, 1);
}

// With rotors that stand still on their axes nothing is left but the crossover's all-pass and the latency.
TEST (RotarySpeaker, AtRestIsLateByItsLatency)
{
    RotarySettings settings;
    settings.horn = { .slowRpm = 0.0, .fastRpm = 0.0, .radiusMetres = 0.0 };
    settings.drum = settings.horn;
    RotarySpeaker speaker (settings, false, rateHz);
    Random random (72);
    const auto in = noise (1000, 1.0, random);
    const auto out = throughWhole (speaker, in);

    Crossover crossover (settings.crossoverHz, rateHz);
    std::vector<double> low (in.size()), high (in.size());
    crossover.process (in, low, high);
    const auto latency = static_cast<std::size_t> (speaker.latencyFrames());
    for (std::size_t i = latency; i < out.size(); ++i)
        ASSERT_NEAR (out[i], low[i - latency] + high[i - latency], 1e-9) << i;
}

TEST (RotarySpeaker, ChangesSpeedWithoutAClick)
{
    RotarySpeaker speaker ({}, false, rateHz);
    throughWhole (speaker, std::vector<double> (10000, 1.0));
    std::vector<double> heard;
    for (int change = 0; change < 20; ++change)
    {
        speaker.setFast (change % 2 == 0);
        const auto part = throughWhole (speaker, std::vector<double> (3000, 1.0));
        heard.insert (heard.end(), part.begin(), part.end());
    }
    // A steady level is the drum's: its amplitude cannot move faster than at full speed, 2 pi 5.7 Hz times less than 1.
    EXPECT_LT (largestStep (heard), 6.284 * 5.7 / rateHz);
}

TEST (RotarySpeaker, DoesNotCareHowTheStreamIsCut)
{
    Random random (73);
    const auto in = noise (20000, 1.0, random);
    RotarySpeaker whole ({}, true, rateHz);
    RotarySpeaker pieces ({}, true, rateHz);
    whole.setFast (false);
    pieces.setFast (false);
    EXPECT_EQ (throughWhole (whole, in), throughPieces (pieces, in, random)); // to the last bit
}

TEST (RotarySpeaker, GoesOnFromAnotherAndForgets)
{
    Random random (74);
    const auto in = noise (3000, 1.0, random);
    RotarySpeaker speaker ({}, true, rateHz);
    const auto first = throughWhole (speaker, in);
    RotarySpeaker other ({}, false, rateHz);
    ASSERT_TRUE (other.isLike (speaker));
    other.copyStateFrom (speaker);
    EXPECT_EQ (throughWhole (other, in), throughWhole (speaker, in));
    speaker.reset();
    EXPECT_EQ (throughWhole (speaker, in), first);

    RotarySettings wide;
    wide.horn.radiusMetres = 0.5;
    EXPECT_FALSE (RotarySpeaker (wide, true, rateHz).isLike (speaker));
    EXPECT_FALSE (RotarySpeaker ({}, true, 44100.0).isLike (speaker));
}

} // namespace
} // namespace stopwright

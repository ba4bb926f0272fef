// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/OutletDelays.h"

#include "Sound/RotarySpeaker.h"
#include "Sound/TestVoice.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace stopwright::test
{

TEST (OutletDelays, OnlyARotarySpeakerIsLate)
{
    const auto organ = larkfield(); // main, tremulant, rotary
    const auto delays = outletDelaySeconds (organ.instrument, 48000.0);
    ASSERT_EQ (delays.size(), 3U);
    EXPECT_EQ (delays[0], 0.0);
    EXPECT_EQ (delays[1], 0.0);

    // A click through the standing speaker, its mouths a radius nearer to the microphone than the axis.
    RotarySettings still;
    still.horn = { .slowRpm = 1e-3, .fastRpm = 1e-3, .radiusMetres = 0.15 };
    still.drum = { .slowRpm = 1e-3, .fastRpm = 1e-3, .radiusMetres = 0.12 };
    RotarySpeaker speaker (still, false, 48000.0);
    std::vector<double> click (512);
    click[0] = 1.0;
    speaker.process (click);
    const auto loudest = std::ranges::max_element (click, {}, [] (double value) { return std::abs (value); });
    const double nearer = 0.15 / 343.0;
    EXPECT_NEAR (static_cast<double> (loudest - click.begin()) / 48000.0, delays[2] - nearer, 2.0 / 48000.0);
}

} // namespace stopwright::test

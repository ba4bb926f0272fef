// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/LoudnessCeiling.h"

#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

constexpr double rateHz = 48000.0;

/// A level whose rms is the given one, up and down in turn.
double steady (double rmsDb, int frame)
{
    return frame % 2 == 0 ? fromDecibels (rmsDb) : -fromDecibels (rmsDb);
}

TEST (LoudnessCeiling, LeavesAloneWhatIsBelow)
{
    LoudnessCeiling loudness (rateHz);
    for (int frame = 0; frame < 96000; ++frame)
        ASSERT_EQ (loudness.gainFor (steady (-12.1, frame)), 1.0);
}

TEST (LoudnessCeiling, PullsDownToTheCeilingAndNotBelow)
{
    for (const double rmsDb : { -6.0, 0.0, 20.0 })
    {
        LoudnessCeiling loudness (rateHz);
        double gain = 1.0;
        for (int frame = 0; frame < 5 * 48000; ++frame)
            gain = loudness.gainFor (steady (rmsDb, frame));
        EXPECT_NEAR (toDecibels (gain) + rmsDb, LoudnessCeiling::ceilingDb, 0.01);
    }
}

TEST (LoudnessCeiling, IsSlow)
{
    LoudnessCeiling loudness (rateHz);
    double before = 1.0;
    for (int frame = 0; frame < 96000; ++frame)
    {
        const double gain = loudness.gainFor (frame < 48000 ? 1.0 : 0.0);
        ASSERT_LE (std::abs (toDecibels (gain / before)), 20.001 / rateHz);
        before = gain;
    }
    EXPECT_LT (before, 1.0);
}

TEST (LoudnessCeiling, ComesBack)
{
    LoudnessCeiling loudness (rateHz);
    for (int frame = 0; frame < 48000; ++frame)
        loudness.gainFor (1.0);
    double gain = 0.0;
    for (int frame = 0; frame < 10 * 48000; ++frame)
        gain = loudness.gainFor (0.0);
    EXPECT_EQ (gain, 1.0);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/WaveReading.h"

#include "Study/SampleCards.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

WaveReading readingOf (const Card& card, int key, double highestHz = 20000.0)
{
    return waveReading (BenchPoint::ofCard (card, keySourceForCardAlone (card, highestHz), {}), key);
}

// A square of +-1 V: 2 V peak to peak, 1 V rms; a meter that averages shows pi / (2 sqrt 2) = 1.1107 V.
TEST (WaveReading, ASquareIsSeenAsItIs)
{
    const auto reading = readingOf (straightCard ({ sampleTap ("A", WaveKind::square) }), 69);
    ASSERT_FALSE (reading.isSilent());
    EXPECT_FALSE (reading.neverRepeats());
    EXPECT_NEAR (reading.wave.baseHz.front(), 440.0, 1e-6);
    EXPECT_NEAR (reading.meters.peakToPeakVolts(), 2.0, 1e-3);
    EXPECT_NEAR (reading.meters.rmsVolts, 1.0, 2e-3);
    EXPECT_NEAR (reading.meters.averageVolts, 1.1107, 3e-3);

    const double period = 1.0 / 440.0;
    EXPECT_NEAR (reading.at (0.25 * period), 1.0, 1e-3);
    EXPECT_NEAR (reading.at (0.75 * period), -1.0, 1e-3);
    EXPECT_NEAR (reading.at (7.25 * period), 1.0, 1e-3);
    EXPECT_NEAR (reading.at (-0.25 * period), -1.0, 1e-3);
    const auto edge = reading.between (0.4 * period, 0.6 * period);
    EXPECT_NEAR (edge.lowest, -1.0, 1e-3);
    EXPECT_NEAR (edge.highest, 1.0, 1e-3);
    const auto top = reading.between (0.2 * period, 0.3 * period);
    EXPECT_NEAR (top.highest - top.lowest, 0.0, 2e-3);
    EXPECT_DOUBLE_EQ (reading.automatic().voltsPerDivision, 0.5);
}

TEST (WaveReading, AKeyWithoutGeneratorIsSilent)
{
    const auto reading = readingOf (straightCard ({ sampleTap ("A", WaveKind::square) }), 84, 500.0);
    EXPECT_TRUE (reading.isSilent());
    EXPECT_EQ (reading.at (0.001), 0.0);
    EXPECT_GT (reading.automatic().secondsPerDivision, 0.0);
}

} // namespace
} // namespace stopwright

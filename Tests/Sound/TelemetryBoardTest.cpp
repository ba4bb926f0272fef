// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/TelemetryBoard.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (TelemetryBoard, KeepsPeaksUntilTheyAreRead)
{
    TelemetryBoard board;
    board.report ({ .peakVolts = 2.0, .rmsFullScaleDb = -20.0, .loadFraction = 0.1, .lastKey = 60 });
    board.report ({ .peakVolts = 1.0, .rmsFullScaleDb = -40.0, .loadFraction = 0.3, .lastKey = -1 });
    const Telemetry first = board.take();
    EXPECT_EQ (first.peakVolts, 2.0);
    EXPECT_EQ (first.loadFraction, 0.3);
    EXPECT_EQ (first.rmsFullScaleDb, -40.0);
    EXPECT_EQ (first.lastKey, 60);

    const Telemetry again = board.take();
    EXPECT_EQ (again.peakVolts, 0.0);
    EXPECT_EQ (again.rmsFullScaleDb, -40.0);
    EXPECT_EQ (again.lastKey, 60);
}

} // namespace
} // namespace stopwright

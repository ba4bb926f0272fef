// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RotorTurn.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

constexpr int rateHz = 48000;

void run (RotorTurn& turn, double seconds)
{
    for (int i = 0; i < static_cast<int> (std::lround (seconds * rateHz)); ++i)
        turn.advance();
}

TEST (RotorTurn, DoesNinetyPerCentOfTheWayInItsTime)
{
    RotorTurn turn ({ .slowRpm = 60.0, .fastRpm = 360.0, .riseSeconds = 1.0, .fallSeconds = 1.5 }, false, rateHz);
    EXPECT_EQ (turn.turnsPerSecond(), 1.0);
    turn.setFast (true);
    run (turn, 0.5);
    EXPECT_NEAR (turn.turnsPerSecond(), 6.0 - 5.0 / std::sqrt (10.0), 1e-9); // half of the time: 1 / sqrt 10 left
    run (turn, 0.5);
    EXPECT_NEAR (turn.turnsPerSecond(), 5.5, 1e-9);

    RotorTurn slowing ({ .slowRpm = 60.0, .fastRpm = 360.0, .riseSeconds = 1.0, .fallSeconds = 1.5 }, true, rateHz);
    EXPECT_EQ (slowing.turnsPerSecond(), 6.0);
    slowing.setFast (false);
    run (slowing, 1.5);
    EXPECT_NEAR (slowing.turnsPerSecond(), 1.5, 1e-9);
}

TEST (RotorTurn, CountsItsTurns)
{
    RotorTurn turn ({ .slowRpm = 48.0, .fastRpm = 400.0 }, false, rateHz);
    run (turn, 1.0);
    EXPECT_NEAR (turn.turns(), 0.8, 1e-9);
    run (turn, 9.5);
    EXPECT_NEAR (turn.turns(), 0.4, 1e-9); // 8.4
    turn.reset();
    EXPECT_EQ (turn.turns(), 0.0);
}

TEST (RotorTurn, JumpsWithoutATime)
{
    RotorTurn turn ({ .slowRpm = 48.0, .fastRpm = 400.0, .riseSeconds = 0.0, .fallSeconds = 0.0 }, false, rateHz);
    turn.setFast (true);
    turn.advance();
    EXPECT_NEAR (turn.turnsPerSecond(), 400.0 / 60.0, 1e-12);
}

TEST (RotorTurn, GoesOnFromAnotherToItsOwnSpeed)
{
    RotorTurn turn ({ .slowRpm = 48.0, .fastRpm = 400.0 }, true, rateHz);
    run (turn, 0.3);
    RotorTurn other ({ .slowRpm = 48.0, .fastRpm = 300.0, .riseSeconds = 1.0, .fallSeconds = 1.0 }, false, rateHz);
    other.copyStateFrom (turn);
    EXPECT_EQ (other.turns(), turn.turns());
    EXPECT_EQ (other.turnsPerSecond(), turn.turnsPerSecond());
    run (other, 20.0);
    EXPECT_NEAR (other.turnsPerSecond(), 5.0, 1e-9);
}

} // namespace
} // namespace stopwright

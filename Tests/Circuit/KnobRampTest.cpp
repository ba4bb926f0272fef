// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/KnobRamp.h"

#include "Support/Tolerances.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

double halfWay (double from, double to, bool isLinear)
{
    KnobRamp ramp (from);
    ramp.moveTo (to, 240, isLinear);
    for (int step = 0; step < 120; ++step)
        ramp.advance();
    return ramp.value();
}

} // namespace

// Closed form: half way in the logarithm is the geometric mean.
TEST (KnobRamp, MovesEvenlyInTheLogarithm)
{
    EXPECT_NEAR (halfWay (100e3, 1e3, false), 10e3, 10e3 * tolerance::algebra);
    EXPECT_NEAR (halfWay (1e-9, 4e-9, false), 2e-9, 2e-9 * tolerance::algebra);
}

TEST (KnobRamp, MovesEvenlyWherePositionOrZero)
{
    EXPECT_NEAR (halfWay (0.25, 0.75, true), 0.5, tolerance::algebra);
    EXPECT_NEAR (halfWay (0.0, 150.0, false), 75.0, 150.0 * tolerance::algebra);
    EXPECT_NEAR (halfWay (150.0, 0.0, false), 75.0, 150.0 * tolerance::algebra);
}

TEST (KnobRamp, ArrivesExactlyAndRests)
{
    KnobRamp ramp (47e3);
    ramp.moveTo (4.7e3, 240, false);
    for (int step = 0; step < 240; ++step)
    {
        EXPECT_TRUE (ramp.isMoving());
        ramp.advance();
    }
    EXPECT_FALSE (ramp.isMoving());
    EXPECT_EQ (ramp.value(), 4.7e3);
    ramp.advance();
    EXPECT_EQ (ramp.value(), 4.7e3);
    ramp.moveTo (4.7e3, 240, false);
    EXPECT_FALSE (ramp.isMoving());
}

} // namespace stopwright

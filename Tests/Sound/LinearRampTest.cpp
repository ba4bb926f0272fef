// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/LinearRamp.h"

#include <gtest/gtest.h>

#include <vector>

namespace stopwright
{
namespace
{

TEST (LinearRamp, RunsStraightAndArrivesExactly)
{
    LinearRamp ramp (1.0, 0.01, 1000.0); // ten frames
    const std::vector<float> ones (12, 1.0F);
    std::vector<double> out (12);
    ramp.setTarget (2.0);
    EXPECT_TRUE (ramp.isMoving());
    ramp.apply (ones, out);

    EXPECT_FALSE (ramp.isMoving());
    for (std::size_t i = 0; i < 9; ++i)
        EXPECT_NEAR (out[i], 1.1 + 0.1 * static_cast<double> (i), 1e-12);
    EXPECT_EQ (out[9], 2.0);
    EXPECT_EQ (out[11], 2.0);
}

TEST (LinearRamp, TurnsFromWhereItStands)
{
    LinearRamp ramp (0.0, 0.01, 1000.0);
    const std::vector<float> ones (5, 1.0F);
    std::vector<double> out (5);
    ramp.setTarget (1.0);
    ramp.apply (ones, out);
    ramp.setTarget (0.0);
    ramp.apply (ones, out);
    EXPECT_NEAR (out[0], 0.45, 1e-12);
    ramp.finish();
    ramp.apply (ones, out);
    EXPECT_EQ (out[0], 0.0);
}

TEST (LinearRamp, StaysExactWhenStill)
{
    LinearRamp ramp (0.3, 0.02, 48000.0);
    const std::vector<float> in { 0.5F, -0.25F };
    std::vector<double> out (2);
    ramp.apply (in, out);
    EXPECT_EQ (out[0], 0.3 * 0.5);
    EXPECT_EQ (out[1], 0.3 * -0.25);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/LevelMeter.h"

#include <gtest/gtest.h>

#include <vector>

namespace stopwright
{
namespace
{

TEST (LevelMeter, ReadsRmsAndPeak)
{
    LevelMeter meter (48000.0);
    EXPECT_EQ (meter.rmsDb(), LevelMeter::lowestDb);
    std::vector<float> halves (96000, 0.5F);
    for (std::size_t i = 0; i < halves.size(); i += 2)
        halves[i] = -0.5F;
    meter.process (halves);
    EXPECT_NEAR (meter.rmsDb(), -6.0206, 1e-3);
    EXPECT_EQ (meter.takePeak(), 0.5);
    EXPECT_EQ (meter.takePeak(), 0.0);
}

TEST (LevelMeter, FallsByTheClock)
{
    LevelMeter meter (48000.0);
    meter.process (std::vector<float> (96000, 1.0F));
    meter.process (std::vector<float> (4800, 0.0F));
    EXPECT_NEAR (meter.rmsDb(), -4.3429, 1e-3); // exp (-1) in power after one time constant
}

} // namespace
} // namespace stopwright

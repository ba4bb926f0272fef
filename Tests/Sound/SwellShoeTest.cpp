// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/SwellShoe.h"

#include "Sound/TestTones.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = 48000.0;
constexpr std::size_t rampFrames = 1440;

double settledDb (SwellShoe& shoe)
{
    return toDecibels (throughWhole (shoe, std::vector<double> (rampFrames, 1.0)).back());
}

TEST (SwellShoe, IsOpenAtFirst)
{
    SwellShoe shoe (-40.0, rateHz);
    const std::vector<double> in { 1.0, -0.3 };
    EXPECT_EQ (throughWhole (shoe, in), in);
}

TEST (SwellShoe, HasEqualStepsOfLevel)
{
    SwellShoe shoe (-40.0, rateHz);
    for (const auto& [position, levelDb] :
         { std::pair { 0.0, -40.0 }, std::pair { 0.25, -30.0 }, std::pair { 0.85, -6.0 }, std::pair { 1.0, 0.0 },
           std::pair { -3.0, -40.0 }, std::pair { 7.0, 0.0 } })
    {
        shoe.setPosition (position);
        EXPECT_NEAR (settledDb (shoe), levelDb, 1e-9) << position;
    }
    shoe.setPosition (0.5);
    shoe.setPosition (std::numeric_limits<double>::quiet_NaN());
    EXPECT_NEAR (settledDb (shoe), -20.0, 1e-9);
}

TEST (SwellShoe, RunsStraightInDecibels)
{
    SwellShoe shoe (-40.0, rateHz);
    shoe.setPosition (0.0);
    const auto gains = throughWhole (shoe, std::vector<double> (rampFrames, 1.0));
    EXPECT_NEAR (toDecibels (gains[rampFrames / 2 - 1]), -20.0, 1e-9); // half way in 15 ms
    for (std::size_t i = 1; i < gains.size(); ++i)
        ASSERT_NEAR (toDecibels (gains[i] / gains[i - 1]), -40.0 / rampFrames, 1e-9);
}

TEST (SwellShoe, TakesNoFloorAboveZero)
{
    for (const double floorDb : { 12.0, std::numeric_limits<double>::quiet_NaN() })
    {
        SwellShoe shoe (floorDb, rateHz);
        shoe.setPosition (0.0);
        EXPECT_EQ (settledDb (shoe), 0.0);
    }
}

TEST (SwellShoe, DoesNotCareHowTheStreamIsCutAndGoesOnFromAnother)
{
    Random random (53);
    const std::vector<double> in (1000, 1.0);
    SwellShoe whole (-30.0, rateHz);
    SwellShoe pieces (-30.0, rateHz);
    whole.setPosition (0.2);
    pieces.setPosition (0.2);
    EXPECT_EQ (throughWhole (whole, in), throughPieces (pieces, in, random)); // to the last bit

    SwellShoe other (-30.0, rateHz);
    other.copyStateFrom (whole);
    EXPECT_EQ (throughWhole (other, in), throughWhole (whole, in));

    SwellShoe deeper (-60.0, rateHz);
    deeper.copyStateFrom (whole);
    EXPECT_NEAR (settledDb (deeper), -48.0, 1e-9);
    deeper.setPosition (1.0);
    deeper.finish();
    EXPECT_EQ (settledDb (deeper), 0.0);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/StreamSpec.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (StreamSpec, BringsEveryRateToTheInternalOne)
{
    EXPECT_EQ (internalFactor ({ .deviceRateHz = 44100.0 }), 4);
    EXPECT_EQ (internalFactor ({ .deviceRateHz = 48000.0 }), 4);
    EXPECT_EQ (internalFactor ({ .deviceRateHz = 88200.0 }), 2);
    EXPECT_EQ (internalFactor ({ .deviceRateHz = 96000.0 }), 2);
    EXPECT_EQ (internalFactor ({ .deviceRateHz = 176400.0 }), 1);
    EXPECT_EQ (internalFactor ({ .deviceRateHz = 192000.0 }), 1);
    EXPECT_EQ (internalFactor ({ .deviceRateHz = 384000.0 }), 1);
    EXPECT_EQ (internalFactor ({ .deviceRateHz = 8000.0 }), 23);
    EXPECT_EQ (internalFactor ({ .deviceRateHz = 48000.0, .lowestInternalRateHz = StreamSpec::fineInternalRateHz }),
               15);
}

TEST (StreamSpec, ForgivesADeviceItsCrystal)
{
    EXPECT_EQ (internalFactor ({ .deviceRateHz = 44099.9 }), 4);
    EXPECT_EQ (internalFactor ({ .deviceRateHz = 44000.0 }), 5);
}

} // namespace
} // namespace stopwright

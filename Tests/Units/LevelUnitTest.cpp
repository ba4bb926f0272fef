// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/LevelUnit.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

// Closed forms: a sine of peak 1 V is 2 V peak to peak, 1 / sqrt 2 = 0.70711 V rms, -3.0103 dBV; 1 mW in 600 ohm is
// sqrt (0.6) = 0.774597 V, which is -2.2185 dBV.
TEST (LevelUnit, TellsASineInAllFour)
{
    EXPECT_DOUBLE_EQ (levelOfSine (1.0, LevelUnit::voltsPeakToPeak), 2.0);
    EXPECT_NEAR (levelOfSine (1.0, LevelUnit::voltsRms), 0.707107, 1e-6);
    EXPECT_NEAR (levelOfSine (1.0, LevelUnit::dbv), -3.0103, 1e-4);
    EXPECT_NEAR (levelOfSine (1.0, LevelUnit::dbu), -3.0103 + 2.2185, 1e-4);
}

TEST (LevelUnit, TellsAnRmsInAllFour)
{
    EXPECT_NEAR (levelOfRms (0.774597, LevelUnit::dbu), 0.0, 1e-5);
    EXPECT_NEAR (levelOfRms (0.774597, LevelUnit::dbv), -2.2185, 1e-4);
    EXPECT_DOUBLE_EQ (levelOfRms (0.25, LevelUnit::voltsRms), 0.25);
    EXPECT_NEAR (levelOfRms (1.0, LevelUnit::voltsPeakToPeak), 2.828427, 1e-6);
}

TEST (LevelUnit, WritesTheUnit)
{
    EXPECT_EQ (levelText (1.234, LevelUnit::voltsPeakToPeak), "1.23 V pp");
    EXPECT_EQ (levelText (0.435, LevelUnit::voltsRms), "435 mV rms");
    EXPECT_EQ (levelText (-7.23, LevelUnit::dbv), "\u22127.2 dBV");
    EXPECT_EQ (levelText (-0.01, LevelUnit::dbu), "0.0 dBu");
    EXPECT_EQ (levelText (levelOfRms (0.0, LevelUnit::dbv), LevelUnit::dbv), "no signal");
}

TEST (LevelUnit, NamesThemAll)
{
    for (const auto unit : levelUnits)
        EXPECT_FALSE (levelUnitName (unit).empty());
    EXPECT_EQ (levelUnitName (LevelUnit::dbu), "dBu");
}

} // namespace
} // namespace stopwright

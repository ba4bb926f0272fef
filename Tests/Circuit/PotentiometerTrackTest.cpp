// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/PotentiometerTrack.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (PotentiometerTrack, SplitsTheTrackAtTheWiper)
{
    const auto track = potentiometerOhms ({ 100e3, 0.3, Taper::linear });
    EXPECT_DOUBLE_EQ (track.upperOhms, 70e3);
    EXPECT_DOUBLE_EQ (track.lowerOhms, 30e3);
}

TEST (PotentiometerTrack, LogTaperHasTenPerCentAtHalfTurn)
{
    // Common practice for audio tapers, no source.
    EXPECT_NEAR (taperFraction (0.5, Taper::log), 0.1, 1e-15);
    EXPECT_EQ (taperFraction (0.0, Taper::log), 0.0);
    EXPECT_EQ (taperFraction (1.0, Taper::log), 1.0);
    EXPECT_EQ (taperFraction (0.5, Taper::linear), 0.5);
    EXPECT_EQ (taperFraction (7.0, Taper::linear), 1.0);
}

TEST (PotentiometerTrack, EndsKeepALeastResistance)
{
    EXPECT_DOUBLE_EQ (potentiometerOhms ({ 100e3, 0.0, Taper::log }).lowerOhms, 0.1);
    EXPECT_DOUBLE_EQ (potentiometerOhms ({ 100.0, 0.0, Taper::linear }).lowerOhms, 1e-3);
    EXPECT_DOUBLE_EQ (potentiometerOhms ({ 100e3, 1.0, Taper::linear }).upperOhms, 0.1);
    EXPECT_DOUBLE_EQ (potentiometerOhms ({ 100e3, 1.0, Taper::linear }).lowerOhms, 100e3);
}

} // namespace
} // namespace stopwright

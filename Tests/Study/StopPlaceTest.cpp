// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StopPlace.h"

#include "Organ/TestOrgan.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

namespace stopwright::test
{

namespace
{

/// Three bare squares on an unloaded passive bus, all drawn: through 47 k, 47 k and 23.5 k.
TestOrgan threeSquares()
{
    auto bus = passiveBus();
    bus.loadOhms = 1e12;
    auto organ = emptyOrgan (bus);
    organ.add ("First", bareCard()).drawn = true;
    organ.add ("Second", bareCard()).drawn = true;
    organ.add ("Third", bareCard(), "Upper", "Bus", 23.5e3).drawn = true;
    return organ;
}

} // namespace

// Closed form: conductances 1, 1 and 2 (in 1 / 47 k) on a bus without load; a stop is heard as its share of them all.
TEST (StopPlace, TellsTheStepToAnotherAndWhatTheRestFeels)
{
    const auto organ = threeSquares();
    const auto place = stopPlaceOf (organ.instrument, organ.cards, 2, 0);
    EXPECT_EQ (place.refusal, "");
    ASSERT_TRUE (place.rmsDb && place.weightedDb);
    EXPECT_NEAR (*place.rmsDb, toDecibels (2.0), 1e-6);
    EXPECT_NEAR (*place.weightedDb, toDecibels (2.0), 1e-6);
    ASSERT_EQ (place.effects.size(), 2U);
    for (const auto& effect : place.effects)
        EXPECT_NEAR (effect.compassDb, toDecibels (0.5), 1e-6); // 1 of 2 without it, 1 of 4 with it
}

TEST (StopPlace, NeedsNoOtherAndSaysWhyThereIsNone)
{
    auto organ = threeSquares();
    EXPECT_FALSE (stopPlaceOf (organ.instrument, organ.cards, 2, {}).rmsDb);
    EXPECT_FALSE (stopPlaceOf (organ.instrument, organ.cards, 2, 2).rmsDb);
    organ.tablet ("Third").bus.clear();
    EXPECT_NE (stopPlaceOf (organ.instrument, organ.cards, 2, 0).refusal, "");
}

} // namespace stopwright::test

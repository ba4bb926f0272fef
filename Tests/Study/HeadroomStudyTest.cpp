// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/HeadroomStudy.h"

#include "Organ/TestOrgan.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

namespace stopwright::test
{

namespace
{

constexpr double unit = 0.5; ///< peak volts of a square of 1 V peak to peak: all below is counted in these

/// C2 G2 C3 E3 G3 C4 E4 G4 C5 E5.
std::vector<HeldKey> tenNotes()
{
    std::vector<HeldKey> held;
    for (const int key : { 36, 43, 48, 52, 55, 60, 64, 67, 72, 76 })
        held.push_back ({ "Upper", key });
    return held;
}

/// A flat virtual earth of gain 1 with rails of 6 V.
TestOrgan flatOrgan()
{
    MixingBus bus;
    bus.kind = BusKind::virtualEarth;
    bus.feedbackOhms = 47e3;
    bus.rails = SupplyRails { -6.0, 6.0 };
    return emptyOrgan (bus);
}

TestOrgan squaresAt (const std::vector<std::string>& footages)
{
    auto organ = flatOrgan();
    for (const auto& footage : footages)
        organ.add ("Square " + footage, bareCard (footage));
    return organ;
}

TestOrgan staircases()
{
    auto organ = flatOrgan();
    auto card = bareCard();
    card.taps.front().wave = { .kind = WaveKind::staircase, .ranks = 4 };
    organ.add ("Staircase", card);
    return organ;
}

StageHeadroom busOf (const TestOrgan& organ, const std::vector<HeldKey>& held, double share = 0.001)
{
    return headroomOf (organ.instrument, organ.cards, { .held = held, .exceededShare = share }).front();
}

} // namespace

// Peak: every square up at once. Rms: a generator that n stops or keys sound counts n^2. Worked by hand.
TEST (HeadroomStudy, ChordsOfTenNotes)
{
    struct Value
    {
        TestOrgan organ;
        double peak;
        double rms;
    };

    for (const Value& value :
         { Value { squaresAt ({ "8" }), 10.0, 3.1623 }, Value { squaresAt ({ "8", "4" }), 20.0, 5.8310 },
           Value { squaresAt ({ "16", "8", "4" }), 30.0, 8.1240 }, Value { staircases(), 18.75, 5.0218 } })
    {
        const auto found = busOf (value.organ, tenNotes());
        EXPECT_NEAR (found.highestVolts / unit, value.peak, 1e-4 * value.peak);
        EXPECT_NEAR (found.lowestVolts / unit, -value.peak, 1e-4 * value.peak);
        EXPECT_NEAR (found.rmsVolts / unit, value.rms, 3e-4 * value.rms);
        printf("%.6f %.6f crest %.4f\n", found.highestVolts/unit, found.rmsVolts/unit, toDecibels(found.peakVolts()/found.rmsVolts));
        printf("exceeded %.5f room %.4f %.4f\n", found.exceededVolts/unit, found.roomDb, found.roomAtShareDb);
    }
}

TEST (HeadroomStudy, ShareOfTime)
{
    auto organ = squaresAt ({ "8" });
    organ.instrument.mixingBuses.front().rails = SupplyRails { -9.9 * unit, 7.9 * unit };
    const auto found = busOf (organ, tenNotes());
    printf ("%.6f %.6f\n", found.shareBelow * 100, found.shareAbove * 100);
}

} // namespace stopwright::test

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StopEffect.h"

#include "Study/LoadedStops.h"
#include "Support/Random.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace stopwright::test
{

namespace
{

/// Nine bare squares through 47 k, the first eight drawn.
TestOrgan nineSquares (double loadOhms)
{
    auto bus = passiveBus();
    bus.loadOhms = loadOhms;
    auto organ = emptyOrgan (bus);
    for (int stop = 0; stop < 9; ++stop)
        organ.add ("Stop " + std::to_string (stop), bareCard()).drawn = stop < 8;
    return organ;
}

/// Mean square over the whole compass, from the whole rail as one network.
double wholeRailPower (const TestOrgan& organ, std::size_t stop)
{
    double power = 0.0;
    for (const int key : { 72, 73 })
        power += std::pow (wholeRailVolts (organ, stop, key), 2);
    return power;
}

TestOrgan without (TestOrgan organ, std::size_t stop)
{
    organ.instrument.stops.erase (organ.instrument.stops.begin() + static_cast<std::ptrdiff_t> (stop));
    organ.cards.ofStops.erase (organ.cards.ofStops.begin() + static_cast<std::ptrdiff_t> (stop));
    return organ;
}

TestOrgan standing (TestOrgan organ, std::size_t stop, StopStand stand)
{
    StopTablet& tablet = organ.instrument.stops[stop];
    tablet.drawn = stand == StopStand::drawn;
    tablet.whenRetired = stand == StopStand::open ? WhenRetired::open : WhenRetired::grounded;
    return organ;
}

} // namespace

// Resistors of 47 k into a load: (8 / 47 k + 1 / RL) / (9 / 47 k + 1 / RL), closed form; without a load 8 / 9.
TEST (StopEffect, ANinthStopOnAPassiveBus)
{
    struct Value
    {
        double loadOhms;
        double db;
    };

    for (const Value& value :
         { Value { 100e3, -0.9693 }, Value { 10e3, -0.6583 }, Value { 1e3, -0.1565 }, Value { 1e12, -1.0231 } })
    {
        const auto organ = nineSquares (value.loadOhms);
        const RailStudy study (organ.instrument, organ.cards);
        const auto changes = changesByStop (study, 8, study.asOpened());
        ASSERT_EQ (changes.size(), 8U);
        for (const auto& change : changes)
        {
            EXPECT_NEAR (change.whenDrawn.compassDb, value.db, 0.00006);
            EXPECT_NEAR (change.whenDrawn.largestDb, value.db, 0.00006);
            EXPECT_NEAR (change.whenRetiredGrounded.compassDb, value.db, 0.00006)
                << "a bare tap has no ohms of its own";
            EXPECT_EQ (change.whenRetiredOpen.compassDb, 0.0);
        }
    }
}

// One stop alone, and the same with eight on in all, which hang open when they are off: 15.2 dB of 100 k, closed form.
TEST (StopEffect, OneAgainstEightOpenWhenOff)
{
    const auto organ = nineSquares (100e3);
    const RailStudy study (organ.instrument, organ.cards);
    double db = 0.0;
    for (std::size_t added = 1; added < 8; ++added)
    {
        std::vector<std::size_t> drawn;
        for (std::size_t stop = 0; stop < added; ++stop)
            drawn.push_back (stop);
        auto state = study.withDrawn (drawn);
        for (std::size_t stop = added; stop < state.stands.size(); ++stop)
            state.stands[stop] = StopStand::open;
        db += changesByStop (study, added, state).front().whenDrawn.compassDb;
    }
    EXPECT_NEAR (db, -15.212, 0.001);
}

TEST (StopEffect, AVirtualEarthKeepsThemApart)
{
    auto organ = emptyOrgan (virtualEarth());
    organ.add ("One", bareCard());
    organ.add ("Other", bareCard());
    const RailStudy study (organ.instrument, organ.cards);
    EXPECT_EQ (changesByStop (study, 1, study.asOpened()).front().whenDrawn.compassDb, 0.0);
}

TEST (StopEffect, AnotherBusIsNotTouched)
{
    const auto organ = larkfield();
    const RailStudy study (organ.instrument, organ.cards);
    const auto changes = changesByStop (study, study.findStop ("Krummhorn 8"), study.asOpened());
    EXPECT_EQ (changes.size(), 14U);
    for (const auto& change : changes)
    {
        const bool isReed = organ.instrument.stops[change.stop].bus == "Upper reeds";
        EXPECT_EQ (change.isOnTheSameBus, isReed);
        EXPECT_EQ (change.whenDrawn.compassDb < -0.1, isReed) << organ.instrument.stops[change.stop].name;
        EXPECT_EQ (change.whenDrawn.largestKey.has_value(), isReed);
    }
}

TEST (StopEffect, AnEndlessMixingResistorChangesNothing)
{
    Random random (20261);
    auto organ = randomOrgan (random, passiveBus(), 5);
    organ.instrument.stops[2].mixingOhms = 1e12;
    const RailStudy study (organ.instrument, organ.cards);
    for (const auto& change : changesByStop (study, 2, study.asOpened()))
    {
        EXPECT_NEAR (change.whenDrawn.largestDb, 0.0, 1e-5);
        EXPECT_NEAR (change.whenRetiredGrounded.largestDb, 0.0, 1e-5);
    }
}

TEST (StopEffect, TheOrderOfTheStopsDoesNotMatter)
{
    Random random (20263);
    const auto organ = randomOrgan (random, passiveBus(), 5);
    auto turned = organ;
    std::ranges::reverse (turned.instrument.stops);
    std::ranges::reverse (turned.cards.ofStops);
    const RailStudy study (organ.instrument, organ.cards);
    const RailStudy turnedStudy (turned.instrument, turned.cards);
    const auto changes = changesByStop (study, 1, study.asOpened());
    const auto turnedChanges = changesByStop (turnedStudy, 3, turnedStudy.asOpened());
    ASSERT_EQ (changes.size(), turnedChanges.size());
    for (const auto& change : changes)
    {
        const auto twin = std::ranges::find (turnedChanges, 4 - change.stop, &OtherStopChange::stop);
        ASSERT_NE (twin, turnedChanges.end());
        EXPECT_NEAR (twin->whenDrawn.compassDb, change.whenDrawn.compassDb, 1e-9);
        EXPECT_NEAR (twin->whenRetiredGrounded.compassDb, change.whenRetiredGrounded.compassDb, 1e-9);
    }
}

TEST (StopEffect, IsTheWholeRailAsOneNetwork)
{
    Random random (20262);
    auto slow = virtualEarth();
    slow.gainBandwidthHz = 50e3;
    auto loom = passiveBus();
    loom.loadOhms = 10e3;
    loom.loadFarads = 5e-9;
    double largest = 0.0;
    for (const MixingBus& bus : { passiveBus(), loom, slow, virtualEarth(), loom })
    {
        const auto organ = randomOrgan (random, bus, 4);
        const RailStudy study (organ.instrument, organ.cards);
        for (const auto& change : changesByStop (study, 3, study.asOpened()))
        {
            const double before = wholeRailPower (without (organ, 3), change.stop);
            for (const auto& [stand, ours] : { std::pair { StopStand::drawn, change.whenDrawn },
                                               { StopStand::open, change.whenRetiredOpen },
                                               { StopStand::grounded, change.whenRetiredGrounded } })
            {
                const double after = wholeRailPower (standing (organ, 3, stand), change.stop);
                const double theirs = toDecibels (std::sqrt (after / before));
                EXPECT_NEAR (ours.compassDb, theirs, 1e-7);
                largest = std::max (largest, std::abs (theirs));
            }
        }
    }
    EXPECT_GT (largest, 0.3);
}

} // namespace stopwright::test

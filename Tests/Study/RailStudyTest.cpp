// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/RailStudy.h"

#include "Organ/TestOrgan.h"
#include "Organ/WholeRailCard.h"
#include "Study/HarmonicTable.h"
#include "Study/ToneLevel.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace stopwright::test
{

namespace
{

struct Registration
{
    std::string division;
    std::vector<std::string> stops;
};

TestOrgan larkfieldWith (const Registration& registration)
{
    auto organ = larkfield();
    for (StopTablet& stop : organ.instrument.stops)
        stop.drawn = std::ranges::find (registration.stops, stop.name) != registration.stops.end();
    return organ;
}

/// All drawn stops of one key together at the outlets.
std::vector<RailPartial> together (const RailStudy& study, const Registration& registration, int key)
{
    std::vector<std::vector<RailPartial>> tones;
    for (const auto& name : registration.stops)
        tones.push_back (study.partials (study.findStop (name), key, study.asOpened()));
    return addTones (tones);
}

/// One bare square of 1 V on a bus of 100 k, and eight of them.
double fundamentalDb (TestOrgan& organ, std::size_t stop, const std::vector<std::size_t>& drawn)
{
    const RailStudy study (organ.instrument, organ.cards);
    const auto partials = study.partials (stop, 57, study.withDrawn (drawn));
    return toDecibels (std::abs (partials.front().volts) / std::abs (partials.front().source));
}

TestOrgan nineSquares (double loadOhms, WhenRetired whenRetired)
{
    auto bus = passiveBus();
    bus.loadOhms = loadOhms;
    auto organ = emptyOrgan (bus);
    for (int stop = 0; stop < 9; ++stop)
        organ.add ("Stop " + std::to_string (stop), bareCard()).whenRetired = whenRetired;
    return organ;
}

} // namespace

// The whole rail with its buses and preamps drawn as one network and solved node by node.
TEST (RailStudy, IsTheWholeRailAsOneNetwork)
{
    for (const Registration& registration :
         { Registration { "Upper manual", { "Krummhorn 8", "Stopped flute 8" } },
           Registration { "Upper manual", { "Krummhorn 8", "Oboe 8", "String 8" } },
           Registration { "Lower manual", { "Diapason 8", "Principal 4", "Trumpet 8" } } })
    {
        const auto organ = larkfieldWith (registration);
        const RailStudy study (organ.instrument, organ.cards);
        const Card whole = wholeRailCard (organ, registration.division);
        const auto keySource = keySourceOf (organ.instrument, registration.division, whole);
        for (const int key : { 36, 60, 96 })
        {
            const auto ours = together (study, registration, key);
            const auto theirs = harmonicTable (whole, keySource, key);
            ASSERT_EQ (ours.size(), theirs.size());
            double largest = 0.0;
            for (const auto& row : theirs)
                largest = std::max (largest, row.outputPeakVolts);
            for (std::size_t row = 0; row < ours.size(); ++row)
                EXPECT_NEAR (std::abs (ours[row].volts), theirs[row].outputPeakVolts, 1e-8 * largest)
                    << registration.stops.front() << ", key " << key << ", " << ours[row].frequencyHz << " Hz";
        }
    }
}

// Resistors of 47 k into 100 k: 1 / R over the sum of all conductances.
TEST (RailStudy, PassiveBusLevels)
{
    auto organ = nineSquares (100e3, WhenRetired::open);
    EXPECT_NEAR (fundamentalDb (organ, 0, { 0 }), -3.346, 0.001);
    EXPECT_NEAR (fundamentalDb (organ, 0, { 0, 1 }), -7.854, 0.001);
    EXPECT_NEAR (fundamentalDb (organ, 0, { 0, 1, 2, 3, 4, 5, 6, 7 }), -18.558, 0.001);
    EXPECT_NEAR (fundamentalDb (organ, 0, { 0, 1, 2, 3, 4, 5, 6, 7, 8 }), -19.527, 0.001);
    auto stiff = nineSquares (1e3, WhenRetired::open);
    EXPECT_NEAR (fundamentalDb (stiff, 0, { 0, 1, 2, 3, 4, 5, 6, 7, 8 }), -34.964, 0.001);
}

TEST (RailStudy, AGroundedStopLoadsLikeADrawnOne)
{
    auto organ = nineSquares (100e3, WhenRetired::grounded);
    EXPECT_NEAR (fundamentalDb (organ, 0, { 0 }), -19.527, 0.001);
    EXPECT_NEAR (fundamentalDb (organ, 0, { 0, 1, 2, 3, 4, 5, 6, 7, 8 }), -19.527, 0.001);
}

TEST (RailStudy, AStopOnNoBusIsHeardAtItsCard)
{
    auto organ = emptyOrgan (passiveBus());
    organ.add ("Free", bareCard()).bus.clear();
    EXPECT_NEAR (fundamentalDb (organ, 0, { 0 }), 0.0, 1e-12);
}

TEST (RailStudy, NamesTheStopsThereAre)
{
    const auto organ = larkfield();
    const RailStudy study (organ.instrument, organ.cards);
    try
    {
        study.findStop ("Kinura 8");
        FAIL();
    }
    catch (const Error& error)
    {
        EXPECT_NE (std::string (error.what()).find ("Krummhorn 8"), std::string::npos) << error.what();
    }
}

} // namespace stopwright::test

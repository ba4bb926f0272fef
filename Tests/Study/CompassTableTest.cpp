// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/CompassTable.h"

#include "Organ/TestOrgan.h"
#include "Study/BenchPoint.h"
#include "Study/CompassTables.h"
#include "Study/HarmonicTable.h"
#include "Study/SampleCards.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

namespace stopwright
{
namespace
{

constexpr double tableDb = 1e-6;

const CompassRow& rowOf (const std::vector<CompassRow>& rows, int key)
{
    return *std::ranges::find (rows, key, &CompassRow::key);
}

TEST (CompassTable, StaircaseThroughATank)
{
    const auto rows = compassTable (shuntTankCard (WaveKind::staircase), keysUpToC9());
    ASSERT_EQ (rows.size(), 61U);
    for (const auto& expected : staircaseThroughTank)
    {
        const auto& row = rowOf (rows, expected.key);
        EXPECT_NEAR (row.level.dbv(), expected.totalDb, tableDb) << expected.key;
        EXPECT_EQ (row.level.strongestHarmonic, expected.strongestHarmonic) << expected.key;
        const double strongestDb = toDecibels (row.level.strongestPeakVolts);
        for (std::size_t i = 0; i < row.harmonicDb.size(); ++i)
        {
            if (expected.partialDb[i] == absent)
            {
                EXPECT_EQ (row.harmonicDb[i], absent) << expected.key << " h" << i + 1;
                continue;
            }
            EXPECT_NEAR (row.harmonicDb[i] + strongestDb, expected.partialDb[i], tableDb)
                << expected.key << " h" << i + 1;
        }
    }
}

// The same partials behind the weighting of IEC 61672-1, worked out outside this program.
TEST (CompassTable, AWeightedStaircaseThroughATank)
{
    const auto rows = compassTable (shuntTankCard (WaveKind::staircase), keysUpToC9());
    for (const auto& [key, db] : { std::pair { 36, -22.802 },
                                   { 48, -18.909 },
                                   { 60, -15.474 },
                                   { 72, -10.811 },
                                   { 84, -5.182 },
                                   { 96, -19.618 } })
        EXPECT_NEAR (rowOf (rows, key).level.dbva(), db, 0.002) << key;
}

TEST (CompassTable, AWeightedFluteOfThreeSections)
{
    const auto rows = compassTable (threeSectionCard(), keysUpToC9());
    for (const auto& expected : squareThroughThreeSections)
        EXPECT_NEAR (rowOf (rows, expected.key).level.dbv(), expected.totalDb, tableDb) << expected.key;
    for (const auto& [key, db] : { std::pair { 36, -26.838 },
                                   { 48, -23.147 },
                                   { 60, -22.379 },
                                   { 72, -25.650 },
                                   { 84, -34.405 },
                                   { 96, -48.477 } })
        EXPECT_NEAR (rowOf (rows, key).level.dbva(), db, 0.002) << key;
}

// The nodal route, key by key.
TEST (CompassTable, AgreesWithTheHarmonicTable)
{
    const Card card = shuntTankCard (WaveKind::sawtooth);
    for (const auto& row : compassTable (card, keySourceForCardAlone (card)))
    {
        if (row.key % 12 != 7)
            continue;
        EXPECT_NEAR (row.level.rmsVolts, rmsVolts (harmonicTable (card, keySourceForCardAlone (card), row.key)), 1e-10)
            << row.key;
    }
}

TEST (CompassTable, ATwinOnAnIdealBusDoublesTheVolts)
{
    MixingBus bus;
    auto organ = test::emptyOrgan (bus);
    organ.add ("One", test::bareCard());
    organ.add ("Twin", test::bareCard());
    const RailStudy study (organ.instrument, organ.cards);
    const auto one = compassTable (study, { 0 }, study.withDrawn ({ 0 }));
    const auto both = compassTable (study, { 0, 1 }, study.withDrawn ({ 0, 1 }));
    for (std::size_t key = 0; key < one.size(); ++key)
        EXPECT_NEAR (both[key].level.dbv() - one[key].level.dbv(), toDecibels (2.0), 1e-9) << key;
}

TEST (CompassTable, AKeyWithoutAGeneratorIsSilent)
{
    Tap tap = sampleTap ("W", WaveKind::square, "1");
    const Card card = straightCard ({ tap });
    const auto rows = compassTable (card, keySourceForCardAlone (card, 8372.1));
    EXPECT_EQ (rowOf (rows, 96).level.dbv(), absent); // C7 at 1 ft would be C10
    EXPECT_EQ (rowOf (rows, 96).harmonicDb[0], absent);
    EXPECT_GT (rowOf (rows, 84).level.rmsVolts, 0.0);
}

TEST (CompassTable, AtAProbeOnTheOutputIsThatOfTheCard)
{
    const auto card = shuntTankCard (WaveKind::staircase);
    const auto point = BenchPoint::ofCard (card, keysUpToC9(), {});
    const auto wanted = compassTable (card, keysUpToC9());
    const auto found = compassTable (point, {});
    ASSERT_EQ (found.size(), wanted.size());
    for (std::size_t row = 0; row < wanted.size(); ++row)
        EXPECT_NEAR (found[row].level.dbv(), wanted[row].level.dbv(), tableDb) << wanted[row].key;

    int asked = 0;
    EXPECT_EQ (compassTable (point, [&] { return ++asked > 7; }).size(), 7U);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/HarmonicTable.h"

#include "Organ/Instrument.h"

#include "Study/CompassTables.h"
#include "Study/SampleCards.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double pi = std::numbers::pi;

/// dB. The tables were worked with pitches of their own, 1e-12 off ours at most, on slopes of some 100 dB an octave.
constexpr double tableDb = 1e-6;

std::vector<HarmonicRow> tableOf (const Card& card, int key)
{
    return harmonicTable (card, keySourceForCardAlone (card), key);
}

const HarmonicRow& rowAt (const std::vector<HarmonicRow>& rows, double harmonic)
{
    const auto found = std::find_if (rows.begin(), rows.end(),
                                     [harmonic] (const HarmonicRow& row) { return row.harmonic == harmonic; });
    if (found == rows.end())
        throw Error ("no row " + std::to_string (harmonic));
    return *found;
}

double totalDb (const std::vector<HarmonicRow>& rows)
{
    double power = 0.0;
    for (const auto& row : rows)
        power += 0.5 * row.outputPeakVolts * row.outputPeakVolts;
    return toDecibels (std::sqrt (power));
}

double strongestHarmonic (const std::vector<HarmonicRow>& rows)
{
    return std::max_element (rows.begin(), rows.end(),
                             [] (const HarmonicRow& a, const HarmonicRow& b)
                             { return a.outputPeakVolts < b.outputPeakVolts; })
        ->harmonic;
}

} // namespace

TEST (HarmonicTable, StaircaseThroughATankOverTheCompass)
{
    const auto card = shuntTankCard (WaveKind::staircase);
    const auto keys = keysUpToC9();
    for (const auto& expected : staircaseThroughTank)
    {
        const auto rows = harmonicTable (card, keys, expected.key);
        EXPECT_NEAR (totalDb (rows), expected.totalDb, tableDb) << expected.key;
        EXPECT_EQ (strongestHarmonic (rows), expected.strongestHarmonic) << expected.key;
        for (std::size_t i = 0; i < std::min (expected.partialDb.size(), rows.size()); ++i)
        {
            EXPECT_EQ (rows[i].harmonic, static_cast<double> (i + 1));
            const double level = toDecibels (rows[i].outputPeakVolts);
            const bool isAbsent = expected.partialDb[i] == absent;
            EXPECT_EQ (level == absent, isAbsent) << expected.key << " h" << i + 1;
            if (! isAbsent)
            {
                EXPECT_NEAR (level, expected.partialDb[i], tableDb) << expected.key << " h" << i + 1;
            }
        }
    }
}

TEST (HarmonicTable, ListsEveryPartialUpToTheLimit)
{
    const auto card = shuntTankCard (WaveKind::staircase);
    for (const auto& [key, count] : { std::pair { 36, 305 }, { 60, 76 }, { 96, 9 } })
        EXPECT_EQ (harmonicTable (card, keysUpToC9(), key).size(),
                   static_cast<std::size_t> (count)); // floor (20 kHz / pitch)

    // One that falls on the limit is in.
    EXPECT_EQ (harmonicTable (card, keySourceForCardAlone (card), 69, 4400.0).size(), 10U);
    EXPECT_EQ (harmonicTable (card, keySourceForCardAlone (card), 69, 4399.9).size(), 9U);
}

TEST (HarmonicTable, RanksWithoutGeneratorsAreMissing)
{
    const auto card = shuntTankCard (WaveKind::staircase);
    // C7 at 8 ft is 2093 Hz: its fourth rank would need 16.7 kHz, and the highest generator is C9, 8372 Hz.
    EXPECT_EQ (rowAt (harmonicTable (card, keysUpToC9(), 96), 8.0).sourcePeakVolts, 0.0);
    EXPECT_NEAR (rowAt (tableOf (card, 96), 8.0).sourcePeakVolts, 4.0 / (8.0 * pi), tolerance::algebra);
}

TEST (HarmonicTable, FluteOfThreeSections)
{
    const auto card = threeSectionCard();
    for (const auto& expected : squareThroughThreeSections)
    {
        const auto rows = tableOf (card, expected.key);
        const auto& first = rowAt (rows, 1.0);
        EXPECT_NEAR (toDecibels (first.outputPeakVolts / first.sourcePeakVolts), expected.fundamentalGainDb, tableDb);
        EXPECT_NEAR (toDecibels (rowAt (rows, 3.0).outputPeakVolts / first.outputPeakVolts), expected.thirdReFirstDb,
                     tableDb);
        EXPECT_NEAR (totalDb (rows), expected.totalDb, tableDb);
    }
}

TEST (HarmonicTable, IntegratorOnASquare)
{
    Card card;
    card.taps = { sampleTap ("W1", WaveKind::square) };
    card.parts = { { "R1", { "in", "o" }, Resistor { 47e3 }, 0.0 }, { "C1", { "o", "0" }, Capacitor { 100e-9 }, 0.0 } };
    card.output = "o";
    for (const int key : { 36, 48, 60, 72, 84, 96 })
    {
        const auto rows = tableOf (card, key);
        for (const int n : { 1, 3, 5 })
        {
            const auto& row = rowAt (rows, n);
            const double corner = 1.0 / (2.0 * pi * 47e3 * 100e-9);
            const double gain = 1.0 / std::hypot (1.0, row.frequencyHz / corner); // first-order low-pass, any textbook
            EXPECT_NEAR (row.sourcePeakVolts, 4.0 / (pi * n), tolerance::transferFunction);
            EXPECT_NEAR (row.outputPeakVolts / row.sourcePeakVolts, gain, tolerance::transferFunction * gain);
        }
        EXPECT_EQ (rowAt (rows, 2.0).outputPeakVolts, 0.0);
        EXPECT_EQ (rowAt (rows, 2.0).outputDb, absent);
    }
    // The five octaves' fall of the fundamental, -6.749 to -35.822 dB: closed form worked to three decimals.
    EXPECT_NEAR (toDecibels (rowAt (tableOf (card, 36), 1.0).outputPeakVolts * pi / 4.0), -6.749, 0.0006);
    EXPECT_NEAR (toDecibels (rowAt (tableOf (card, 96), 1.0).outputPeakVolts * pi / 4.0), -35.822, 0.0006);
}

TEST (HarmonicTable, RelatesToTheStrongest)
{
    const auto rows = tableOf (shuntTankCard (WaveKind::square), 60);
    EXPECT_EQ (strongestHarmonic (rows), 3.0); // the odd partial nearest to 1075 Hz
    EXPECT_EQ (rowAt (rows, 3.0).outputDb, 0.0);
    EXPECT_NEAR (rowAt (rows, 1.0).outputDb, -5.5, 0.05); // Fourier series x nodal analysis, worked to one decimal
}

TEST (HarmonicTable, OppositePolaritiesCancel)
{
    auto taps = std::vector { sampleTap ("A", WaveKind::sawtooth), sampleTap ("B", WaveKind::sawtooth) };
    taps[1].polarity = -1;
    const auto card = straightCard (taps);
    for (const auto& row : tableOf (card, 60))
    {
        EXPECT_EQ (row.sourcePeakVolts, 0.0);
        EXPECT_EQ (row.outputPeakVolts, 0.0);
        EXPECT_EQ (row.outputDb, absent);
    }

    taps[1].polarity = 1;
    EXPECT_NEAR (rowAt (tableOf (straightCard (taps), 60), 1.0).sourcePeakVolts, 4.0 / pi, tolerance::algebra);
}

TEST (HarmonicTable, TapsAddAsComplexAmplitudes)
{
    // A sawtooth of 2 V and a square of 1 V share their rise: 2/pi + 2/pi at the first partial, 1/pi at the second.
    auto taps = std::vector { sampleTap ("A", WaveKind::sawtooth), sampleTap ("B", WaveKind::square) };
    taps[1].voltsPeakToPeak = 1.0;
    const auto inPhase = tableOf (straightCard (taps), 60);
    EXPECT_NEAR (rowAt (inPhase, 1.0).sourcePeakVolts, 4.0 / pi, tolerance::algebra);
    EXPECT_NEAR (rowAt (inPhase, 2.0).sourcePeakVolts, 1.0 / pi, tolerance::algebra);
    EXPECT_NEAR (rowAt (inPhase, 1.0).outputPeakVolts, 2.0 / pi, tolerance::transferFunction); // mean of the two

    // A triangle starts its period at its lowest point, a quarter of it away from the square: at right angles.
    taps = { sampleTap ("A", WaveKind::triangle), sampleTap ("B", WaveKind::square) };
    const double expected = std::hypot (8.0 / (pi * pi), 4.0 / pi);
    EXPECT_NEAR (rowAt (tableOf (straightCard (taps), 60), 1.0).sourcePeakVolts, expected, tolerance::algebra);
}

TEST (HarmonicTable, SubOctaveCountsFromAHalf)
{
    const auto rows =
        tableOf (straightCard ({ sampleTap ("A", WaveKind::sawtooth, "16"), sampleTap ("B", WaveKind::square) }), 60);
    EXPECT_EQ (rows[0].harmonic, 0.5);
    EXPECT_EQ (rows[1].harmonic, 1.0);
    EXPECT_EQ (rows[2].harmonic, 1.5);
    EXPECT_NEAR (rows[0].sourcePeakVolts, 2.0 / pi, tolerance::algebra);
    EXPECT_NEAR (rows[1].sourcePeakVolts, 1.0 / pi + 4.0 / pi,
                 tolerance::algebra); // h2 of the saw meets h1 of the square
}

TEST (HarmonicTable, ExactMutationsFallOnHarmonics)
{
    const auto card = straightCard ({ sampleTap ("A", WaveKind::square), sampleTap ("B", WaveKind::square, "2 2/3") });
    for (const int key : { 36, 61, 72, 95 })
    {
        const auto rows = tableOf (card, key);
        for (std::size_t i = 0; i < rows.size(); ++i)
            EXPECT_EQ (rows[i].harmonic, static_cast<double> (i + 1)) << key; // none between, none twice
        EXPECT_NEAR (rowAt (rows, 3.0).sourcePeakVolts, 4.0 / (3.0 * pi) + 4.0 / pi, 1e-9);
    }
}

TEST (HarmonicTable, BorrowedMutationsFallBesideThem)
{
    const auto card = straightCard ({ sampleTap ("A", WaveKind::square), sampleTap ("B", WaveKind::square, "2 2/3") });
    const auto rows = harmonicTable (card, keysUpToC9(), 60);
    // Nineteen tempered semitones instead of a twelfth: 2^(19/12), below the true third.
    EXPECT_NEAR (rows[2].harmonic, std::exp2 (19.0 / 12.0), 1e-9);
    EXPECT_EQ (rows[3].harmonic, 3.0);
    EXPECT_NEAR (rows[2].sourcePeakVolts, 4.0 / pi, tolerance::algebra);
    EXPECT_NEAR (rows[3].sourcePeakVolts, 4.0 / (3.0 * pi), tolerance::algebra);
}

TEST (HarmonicTable, BrokenBackTapsCountFromTheOctaveTheySound)
{
    Instrument organ;
    organ.divisions = { { "Manual", 36, 96, {} } };
    organ.tuning.top = TopBehaviour::breakBack;
    const auto card = straightCard ({ sampleTap ("A", WaveKind::square, "1") });
    const auto rows =
        harmonicTable (card, keySourceOf (organ, "Manual", card), 96); // C7 at 1 ft is C10; C9 is the last
    EXPECT_EQ (rows[0].harmonic, 4.0);

    organ.tuning.top = TopBehaviour::silent;
    EXPECT_TRUE (harmonicTable (card, keySourceOf (organ, "Manual", card), 96).empty());
}

TEST (HarmonicTable, RefusesInWords)
{
    auto card = shuntTankCard (WaveKind::square);
    const auto keys = keysUpToC9();
    EXPECT_THROW (harmonicTable (card, keys, -1), Error);
    EXPECT_THROW (harmonicTable (card, keys, 128), Error);
    EXPECT_THROW (harmonicTable (card, keys, 60, 0.0), Error);
    EXPECT_THROW (harmonicTable (card, keys, 60, std::nan ("")), Error);
    card.output = "nowhere";
    EXPECT_THROW (harmonicTable (card, keys, 60), Error);
}

} // namespace stopwright

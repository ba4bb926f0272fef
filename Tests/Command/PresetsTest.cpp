// SPDX-License-Identifier: GPL-3.0-or-later
//
// The cards of the demonstration organ against what their notes aim at. The masks are common practice, from memory, no
// published source; so is the spread of 6 dB that each may have.
#include "Circuit/SmallSignal.h"
#include "Command/PresetMaskTable.h"
#include "Command/ProgramRun.h"
#include "Organ/CardDocument.h"
#include "Organ/InstrumentDocument.h"
#include "Study/HarmonicTable.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace stopwright
{

namespace
{

constexpr int middleC = 60;

/// IEC 61672-1: the A-weighting as a voltage ratio.
double aWeight (double frequencyHz)
{
    const double f = frequencyHz * frequencyHz;
    const auto corner = [f] (double cornerHz) { return f + cornerHz * cornerHz; };
    constexpr double gainAt1kHzDb = 1.99966;
    return std::pow (10.0, gainAt1kHzDb / 20.0) * 12194.217 * 12194.217 * f * f
           / (corner (20.598997) * std::sqrt (corner (107.65265) * corner (737.86223)) * corner (12194.217));
}

std::vector<HarmonicRow> tableOf (const Card& card, int key = middleC)
{
    return harmonicTable (card, keySourceForCardAlone (card), key);
}

double levelDba (const std::vector<HarmonicRow>& rows)
{
    double sum = 0.0;
    for (const auto& row : rows)
        sum += 0.5 * std::pow (row.outputPeakVolts * aWeight (row.frequencyHz), 2.0);
    return 10.0 * std::log10 (sum);
}

double levelRms (const std::vector<HarmonicRow>& rows)
{
    double sum = 0.0;
    for (const auto& row : rows)
        sum += 0.5 * row.outputPeakVolts * row.outputPeakVolts;
    return std::sqrt (sum);
}

/// By harmonic of a pitch that is `unison` times the key's 8 ft pitch.
std::map<int, double> levelsOf (const std::vector<HarmonicRow>& rows, double unison = 1.0)
{
    std::map<int, double> levels;
    for (const auto& row : rows)
        levels[static_cast<int> (std::lround (row.harmonic / unison))] = row.outputDb;
    return levels;
}

} // namespace

TEST (Presets, HarmonicPicturesAreWithinTheirMasks)
{
    for (const auto& mask : presetMasks())
    {
        const auto levels = levelsOf (tableOf (readCard (preset (mask.file)), mask.key), mask.unison);
        const double reference = mask.referenceHarmonic == 0 ? 0.0 : levels.at (mask.referenceHarmonic);
        for (const auto& wish : mask.wishes)
        {
            const double found = levels.at (wish.harmonic) - reference;
            if (wish.atMost)
                EXPECT_LE (found, wish.levelDb) << mask.file << " harmonic " << wish.harmonic;
            else
                EXPECT_NEAR (found, wish.levelDb, maskToleranceDb) << mask.file << " harmonic " << wish.harmonic;
        }
    }
}

TEST (Presets, AnotherStopIsOutsideTheMask)
{
    // The twin: the stopped flute is no krummhorn.
    const auto levels = levelsOf (tableOf (readCard (preset ("StoppedFlute8.json"))));
    EXPECT_GT (std::abs (levels.at (3) - levels.at (1) - 0.0), maskToleranceDb);
}

TEST (Presets, KrummhornIsHollowBelowAndFlatToFourKilohertz)
{
    const auto levels = levelsOf (tableOf (readCard (preset ("Krummhorn8.json"))));
    for (int odd = 1; odd <= 7; odd += 2)
        EXPECT_GT (levels.at (odd) - levels.at (odd + 1), 6.0) << "harmonics " << odd << " and " << odd + 1;
    // Harmonics 7 to 15 of C4 lie from 1.8 to 3.9 kHz; a square alone would fall 6.6 dB over them and more in a filter.
    EXPECT_GT (levels.at (15) - levels.at (7), -9.0);
    EXPECT_LT (levels.at (31) - levels.at (15), -15.0) << "steep above 4 to 5 kHz";
}

TEST (Presets, LevelsAreUsableAndAlike)
{
    double softest = 0.0;
    double loudest = -1000.0;
    for (const auto& mask : presetMasks())
    {
        const auto rows = tableOf (readCard (preset (mask.file)), mask.key);
        EXPECT_GT (levelRms (rows), 0.020) << mask.file;
        EXPECT_LT (levelRms (rows), 0.200) << mask.file;
        if (mask.key != middleC)
            continue; // the weighting says little about how loud a pedal stop is beside a manual one
        softest = std::min (softest, levelDba (rows));
        loudest = std::max (loudest, levelDba (rows));
    }
    EXPECT_LT (loudest - softest, 10.0);
}

TEST (Presets, NoCardPullsItsBusDownByMoreThanHalfADecibel)
{
    for (const auto& mask : presetMasks())
    {
        const auto card = readCard (preset (mask.file));
        const SmallSignal network (netlistOf (card));
        for (const auto& tap : card.taps)
            for (double frequencyHz = 50.0; frequencyHz < 10000.0; frequencyHz *= 1.05)
                EXPECT_GT (20.0 * std::log10 (std::abs (network.response (tap.name, tap.node, frequencyHz))), -0.55)
                    << mask.file << " at " << frequencyHz;
    }
}

TEST (Presets, EveryCardHasANoteAndKeysOfTheOrganSound)
{
    const auto organ = readInstrument (preset ("LarkfieldOrgan.json"));
    EXPECT_EQ (organ.stops.size(), 15U);
    int proposed = 0;
    for (const auto& stop : organ.stops)
    {
        const auto card = readCard (preset (stop.cardFile));
        EXPECT_EQ (card.name, stop.name);
        EXPECT_GT (card.note.size(), 200U);
        EXPECT_NE (card.note.find ("common practice"), std::string::npos) << card.name;
        proposed += stop.proposed ? 1 : 0;
        EXPECT_FALSE (stop.bus.empty()) << stop.name;
        const auto source = keySourceOf (organ, stop.division, card);
        for (int key = source.lowestKey; key <= source.highestKey; ++key)
            EXPECT_GT (levelRms (harmonicTable (card, source, key)), 0.001) << card.name << " key " << key;
    }
    EXPECT_EQ (proposed, 1);
}

TEST (Presets, OrganOpensWithTheProposedStopAlone)
{
    std::vector<std::string> drawn;
    for (const auto& stop : readInstrument (preset ("LarkfieldOrgan.json")).stops)
        if (stop.drawn)
            drawn.push_back (stop.name);
    EXPECT_EQ (drawn, std::vector<std::string> { "Krummhorn 8" });
}

} // namespace stopwright

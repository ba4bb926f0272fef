// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/CompassDrawing.h"

#include "Sheet/CsvRows.h"
#include "Sheet/InkColours.h"
#include "Sheet/PictureCheck.h"
#include "Sheet/SvgWriter.h"
#include "Sheet/XmlCheck.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

/// Keys C2 to C7, a dB more each, harmonics 8 dB apart; the lowest key silent.
std::vector<CompassRow> risingRows()
{
    std::vector<CompassRow> rows;
    for (int key = 36; key <= 96; ++key)
    {
        CompassRow row;
        row.key = key;
        row.fundamentalHz = 440.0 * std::exp2 ((key - 69) / 12.0);
        row.level.rmsVolts = key == 36 ? 0.0 : 1e-3 * std::pow (10.0, (key - 36) / 20.0);
        row.level.aWeightedVolts = 0.5 * row.level.rmsVolts;
        for (std::size_t harmonic = 0; harmonic < CompassRow::harmonicCount; ++harmonic)
            row.harmonicDb[harmonic] = key == 36 ? -HUGE_VAL : -8.0 * static_cast<double> (harmonic);
        rows.push_back (row);
    }
    return rows;
}

const ReadingFormat usual { 450.0, 330.0, 10.0, LevelUnit::voltsRms, {} };

TEST (CompassDrawing, ShadesAreTenDecibelsEach)
{
    EXPECT_EQ (compassShade (0.0), 0);
    EXPECT_EQ (compassShade (-10.0), 0);
    EXPECT_EQ (compassShade (-10.1), 1);
    EXPECT_EQ (compassShade (-59.9), 5);
    EXPECT_EQ (compassShade (-60.0), compassShades);
    EXPECT_EQ (compassShade (-HUGE_VAL), compassShades);
}

TEST (CompassDrawing, ShadesDifferInLightnessAlone)
{
    const auto picture = compassPicture (risingRows(), CompassLevel::rms, 60, usual);
    std::vector<double> strengths;
    for (const auto& area : picture.drawing.areas)
        if (area.ink == Ink::result && strengths.size() < compassShades)
            strengths.push_back (area.strength);
    ASSERT_EQ (strengths.size(), static_cast<std::size_t> (compassShades)) << "the legend's";
    for (std::size_t shade = 1; shade < strengths.size(); ++shade)
    {
        const auto darker = InkColours::print().of (Ink::result, strengths[shade - 1]);
        const auto lighter = InkColours::print().of (Ink::result, strengths[shade]);
        EXPECT_GT (lighter.green - darker.green, 15) << shade;
    }
}

TEST (CompassDrawing, ASpotForEachKeyAndPartial)
{
    const auto picture = compassPicture (risingRows(), CompassLevel::aWeighted, 60, usual);
    ASSERT_EQ (picture.columnLength, 17u);
    ASSERT_EQ (picture.spots.size(), 61u * 17u);
    // C4 is the 25th key: 24 dB above 1 mV, half of it weighted.
    EXPECT_EQ (picture.spots[24 * 17].sentence, "C4, 262 Hz: 7.92 mV rms, A-weighted");
    EXPECT_EQ (picture.spots[24 * 17 + 16].sentence, "C4, 262 Hz, partial 1: 0.0 dB");
    EXPECT_EQ (picture.spots[24 * 17 + 15].sentence, "C4, 262 Hz, partial 2: \u22128.0 dB");
    EXPECT_EQ (picture.spots[16].sentence, "C2, 65.4 Hz, partial 1: none");
    EXPECT_EQ (picture.sentence, "Loudest at C7, softest at C#2, 59.0 dB between them");

    // Eight cells of 0 .. -56 dB are shaded in each of sixty keys, and six signs.
    EXPECT_EQ (test::boxesOf (picture.drawing, Ink::result, false).size(), 60u * 8u + 6u);
}

TEST (CompassDrawing, HasRoomAtEverySize)
{
    for (const auto& format : test::someFormats())
    {
        const auto picture = compassPicture (risingRows(), CompassLevel::aWeighted, 60, format);
        EXPECT_EQ (test::pictureFault (picture), "") << format.width;
        EXPECT_EQ (test::xmlFault (svgText (picture.drawing)), "");
    }
    EXPECT_NE (compassPicture ({}, CompassLevel::rms, -1, usual).sentence.find ("No key sounds"), std::string::npos);
}

TEST (CompassDrawing, ItsNumbersAreReadBack)
{
    const auto rows = test::csvRows (compassCsv (risingRows()));
    ASSERT_EQ (rows.size(), 62u);
    EXPECT_EQ (rows[25][0], "C4");
    EXPECT_NEAR (test::csvNumberAt (rows, 24, "level_dbv"), -36.0, 1e-6);
    EXPECT_EQ (test::csvNumberAt (rows, 24, "h3_db"), -16.0);
    EXPECT_EQ (rows[1][4], "-inf");
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/ResponseDrawing.h"

#include "Sheet/CsvRows.h"
#include "Sheet/PictureCheck.h"
#include "Sheet/SvgWriter.h"
#include "Sheet/XmlCheck.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

/// Flat at so many dB, with two partials.
ResponseReading::Curve curveAt (const std::string& tap, double db)
{
    ResponseReading::Curve curve { tap, {}, {} };
    for (int row = 0; row <= 240; ++row)
        curve.rows.push_back ({ 20.0 * std::pow (1000.0, row / 240.0), db, -45.0 });
    curve.partials = { { 1.0, { 261.6, db, -45.0 }, true }, { 2.0, { 523.2, db, -45.0 }, false } };
    return curve;
}

ResponseReading twoTaps()
{
    return { 60, 261.6, { curveAt ("Square 8", -20.0), curveAt ("Staircase 8", -40.0) } };
}

const ReadingFormat usual { 450.0, 330.0, 10.0, LevelUnit::voltsRms, {} };

TEST (ResponseDrawing, CurvesLieAtTheirLevels)
{
    const auto picture = responsePicture (twoTaps(), false, usual);
    std::vector<const DrawnLine*> curves;
    const DrawnLine* frame = nullptr;
    for (const auto& line : picture.drawing.lines)
    {
        if (line.points.size() == 241)
            curves.push_back (&line);
        else if (line.isClosed && line.points.size() == 4)
            frame = &line;
    }
    ASSERT_EQ (curves.size(), 2u);
    ASSERT_NE (frame, nullptr);
    // The highest ten above -20 dB, with a tenth to spare, is -10 dB; 60 dB are shown.
    const double top = frame->points[0].y;
    const double perDb = (frame->points[2].y - top) / 60.0;
    EXPECT_NEAR (curves[0]->points[10].y, top + 10.0 * perDb, 1e-6);
    EXPECT_NEAR (curves[1]->points[10].y, top + 30.0 * perDb, 1e-6);
    EXPECT_NE (curves[0]->isDashed, curves[1]->isDashed) << "told apart without colour";
}

TEST (ResponseDrawing, ASpotTellsThePartialOfEveryTap)
{
    const auto picture = responsePicture (twoTaps(), true, usual);
    ASSERT_EQ (picture.spots.size(), 2u);
    EXPECT_EQ (
        picture.spots[1].sentence,
        "Partial 2, 523 Hz: Square 8 \u221220.0 dB at \u221245\u00b0, Staircase 8 \u221240.0 dB at \u221245\u00b0");
    EXPECT_NE (picture.sentence.find ("from Square 8"), std::string::npos) << picture.sentence;
}

TEST (ResponseDrawing, WithoutPartialsThirdsOfAnOctaveAreTold)
{
    auto reading = twoTaps();
    for (auto& curve : reading.curves)
        curve.partials.clear();
    EXPECT_EQ (responsePicture (reading, false, usual).spots.size(), 31u);
    EXPECT_NE (responsePicture ({}, false, usual).sentence.find ("no tap"), std::string::npos);
}

/// One curve falls by 24 dB an octave from 0 dB, far below the 60 dB that are shown; the other is all below.
ResponseReading steepTaps()
{
    auto steep = curveAt ("Square 8", 0.0);
    for (auto& row : steep.rows)
        row.magnitudeDb = -24.0 * std::log2 (row.frequencyHz / 20.0);
    return { 60, 261.6, { steep, curveAt ("Staircase 8", -75.0) } };
}

TEST (ResponseDrawing, ACurveLeavesThePictureWhereItLeavesTheScale)
{
    const auto picture = responsePicture (steepTaps(), false, usual);
    const DrawnLine* frame = nullptr;
    std::vector<const DrawnLine*> curves;
    for (const auto& line : picture.drawing.lines)
        if (line.isClosed && line.points.size() == 4)
            frame = &line;
        else if (! line.isClosed && line.points.size() > 40)
            curves.push_back (&line);
    ASSERT_NE (frame, nullptr);
    ASSERT_EQ (curves.size(), 1u) << "of the second nothing is to be seen";
    const double bottom = frame->points[2].y;
    const double left = frame->points[0].x;
    const auto& end = curves[0]->points.back();
    EXPECT_NEAR (end.y, bottom, 1e-9);
    // Closed form: from +10 dB down the scale ends at -50 dB, 50 / 24 octaves up of the log2 (1000) shown.
    EXPECT_NEAR (end.x, left + (frame->points[2].x - left) * (50.0 / 24.0) / std::log2 (1000.0), 0.05);
    EXPECT_LT (curves[0]->points[curves[0]->points.size() - 2].y, bottom) << "it does not run along the edge";
    EXPECT_TRUE (test::hasText (picture.drawing, "2 Staircase 8 (below the scale)"));
    EXPECT_FALSE (test::hasText (picture.drawing, "1 Square 8 (below"));
    for (const auto& format : test::someFormats())
        EXPECT_EQ (test::pictureFault (responsePicture (steepTaps(), true, format)), "") << format.width;
}

TEST (ResponseDrawing, HasRoomAtEverySize)
{
    for (const auto& format : test::someFormats())
        for (const bool hasPhase : { false, true })
        {
            const auto picture = responsePicture (twoTaps(), hasPhase, format);
            EXPECT_EQ (test::pictureFault (picture), "") << format.width << ' ' << hasPhase;
            EXPECT_EQ (test::xmlFault (svgText (picture.drawing)), "");
        }
}

TEST (ResponseDrawing, ItsNumbersAreReadBack)
{
    const auto rows = test::csvRows (responseCsv (twoTaps()));
    ASSERT_EQ (rows.size(), 1u + 2u * 243u);
    EXPECT_EQ (rows[1][0], "Square 8");
    EXPECT_EQ (test::csvNumberAt (rows, 0, "magnitude_db"), -20.0);
    EXPECT_EQ (test::csvNumberAt (rows, 242, "partial_of_key"), 2.0);
}

} // namespace
} // namespace stopwright

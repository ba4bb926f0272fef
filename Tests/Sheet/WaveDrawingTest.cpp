// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/WaveDrawing.h"

#include "Sheet/CsvRows.h"
#include "Sheet/PictureCheck.h"
#include "Sheet/SvgWriter.h"
#include "Sheet/XmlCheck.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace stopwright
{
namespace
{

/// A sine of 1 V peak at 1 kHz.
WaveReading sine()
{
    constexpr int steps = 4096;
    WaveReading reading;
    reading.keyHz = 1000.0;
    reading.wave.baseHz = { 1000.0 };
    reading.wave.waves.emplace_back();
    for (int step = 0; step < steps; ++step)
        reading.wave.waves[0].push_back (std::sin (2.0 * M_PI * step / steps));
    reading.meters = meterReadings (reading.wave.waves);
    return reading;
}

const ReadingFormat usual { 450.0, 330.0, 10.0, LevelUnit::voltsRms, {} };

const DrawnLine& traceOf (const ReadingPicture& picture)
{
    return *std::ranges::find (picture.drawing.lines, Ink::result, &DrawnLine::ink);
}

TEST (WaveDrawing, TheTraceFillsItsDivisions)
{
    // 0.5 V a division: 1 V is two of the four divisions above the middle.
    const auto picture = wavePicture (sine(), { 0.5, 200e-6 }, usual);
    const auto frame = std::ranges::find_if (picture.drawing.lines, &DrawnLine::isClosed);
    ASSERT_NE (frame, picture.drawing.lines.end());
    const double top = frame->points[0].y;
    const double height = frame->points[2].y - top;
    const auto& points = traceOf (picture).points;
    const auto [highest, lowest] = std::ranges::minmax (points, {}, &DrawingPoint::y);
    EXPECT_NEAR (highest.y, top + 0.25 * height, 1.0);
    EXPECT_NEAR (lowest.y, top + 0.75 * height, 1.0);

    // Two periods in ten divisions of 0.2 ms: the first crest an eighth of the way.
    const auto crest = std::ranges::min_element (points, {}, &DrawingPoint::y);
    const double width = frame->points[1].x - frame->points[0].x;
    const double along = std::fmod ((crest->x - frame->points[0].x) / width, 0.5);
    EXPECT_NEAR (along, 0.125, 0.02);
}

TEST (WaveDrawing, TheTraceLeavesTheScreenWhereItIsTooHigh)
{
    // 0.1 V a division shows 0.4 V to either side of 1 V peak: within it asin (0.4) of each quarter period.
    const auto picture = wavePicture (sine(), { 0.1, 200e-6 }, usual);
    const auto frame = std::ranges::find_if (picture.drawing.lines, &DrawnLine::isClosed);
    ASSERT_NE (frame, picture.drawing.lines.end());
    const double top = frame->points[0].y;
    const double bottom = frame->points[2].y;
    std::size_t pieces = 0;
    for (const auto& line : picture.drawing.lines)
        if (line.ink == Ink::result)
        {
            ++pieces;
            const auto onEdge = std::ranges::count_if (line.points, [&] (DrawingPoint point)
                                                       { return point.y <= top || point.y >= bottom; });
            EXPECT_LE (onEdge, 2) << "it does not run along the edge";
        }
    EXPECT_EQ (pieces, 5u) << "two periods cross the middle four times; the first crossing is cut in two";
    const auto& crest = picture.spots[6]; // 1.3 divisions, near the crest
    EXPECT_FALSE (crest.mark.has_value()) << crest.sentence;
    EXPECT_TRUE (picture.spots[0].mark.has_value());
}

TEST (WaveDrawing, TellsSettingsAndMeters)
{
    const auto picture = wavePicture (sine(), {}, usual);
    EXPECT_TRUE (test::hasText (picture.drawing, "0.5 V and 0.2 ms a division")
                 || test::hasText (picture.drawing, "500 mV and 200 \u00b5s a division"));
    EXPECT_TRUE (test::hasText (picture.drawing, "2.00 V"));
    EXPECT_TRUE (test::hasText (picture.drawing, "707 mV rms"));
    ASSERT_EQ (picture.spots.size(), 50u);
    EXPECT_EQ (picture.spots[0].sentence.find ("20.0 \u00b5s after the rising edge: "), 0u)
        << picture.spots[0].sentence;
}

TEST (WaveDrawing, MetersShowNoPeaks)
{
    auto format = usual;
    format.unit = LevelUnit::voltsPeakToPeak;
    EXPECT_TRUE (test::hasText (wavePicture (sine(), {}, format).drawing, "707 mV rms"));
    format.unit = LevelUnit::dbv;
    EXPECT_FALSE (test::hasText (wavePicture (sine(), {}, format).drawing, "707 mV rms"));
}

TEST (WaveDrawing, HasRoomAtEverySize)
{
    for (const auto& format : test::someFormats())
    {
        const auto picture = wavePicture (sine(), {}, format);
        EXPECT_EQ (test::pictureFault (picture), "") << format.width;
        EXPECT_EQ (test::xmlFault (svgText (picture.drawing)), "");
        EXPECT_EQ (test::pictureFault (wavePicture (WaveReading {}, {}, format)), "");
    }
}

TEST (WaveDrawing, ASilentKeyAndAWaveThatNeverRepeatsAreAnsweredInWords)
{
    EXPECT_NE (wavePicture (WaveReading {}, {}, usual).sentence.find ("No generator"), std::string::npos);
    auto two = sine();
    two.wave.baseHz.push_back (1498.3);
    two.wave.waves.push_back (two.wave.waves[0]);
    EXPECT_NE (wavePicture (two, {}, usual).sentence.find ("never repeats"), std::string::npos);
}

TEST (WaveDrawing, ItsNumbersAreReadBack)
{
    const auto rows = test::csvRows (waveCsv (sine(), { 0.5, 100e-6 }));
    ASSERT_EQ (rows.size(), 1002u);
    EXPECT_NEAR (test::csvNumberAt (rows, 250, "time_s"), 0.25e-3, 1e-12);
    EXPECT_NEAR (test::csvNumberAt (rows, 250, "volts"), 1.0, 1e-6);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/StageDrawing.h"

#include "Sheet/CsvRows.h"
#include "Sheet/PictureCheck.h"
#include "Sheet/SvgWriter.h"
#include "Sheet/XmlCheck.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

/// A stage between +-10 V whose peaks reach so far either way.
StageHeadroom stageOf (const std::string& name, double peakVolts)
{
    StageHeadroom stage;
    stage.name = name;
    stage.preamp = "Main preamp";
    stage.limits = { -10.0, 10.0 };
    stage.lowestVolts = -peakVolts;
    stage.highestVolts = peakVolts;
    stage.rmsVolts = 0.1 * peakVolts;
    stage.roomDb = toDecibels (10.0 / peakVolts);
    stage.roomAtShareDb = stage.roomDb + 6.0;
    return stage;
}

StageReading someStages()
{
    StageReading reading;
    reading.stages = { stageOf ("Input", 1.0), stageOf ("Gain", 20.0) };
    reading.stages.push_back (stageOf ("Bus", 1.0));
    reading.stages.back().preamp.clear();
    reading.stages.back().limits = noLimits;
    reading.stages.back().roomDb = reading.stages.back().roomAtShareDb = HUGE_VAL;
    reading.drawn = { "Krummhorn 8" };
    return reading;
}

const ReadingFormat usual { 450.0, 330.0, 10.0, LevelUnit::voltsRms, {} };

TEST (StageDrawing, BarsEndAtTheirLevelReTheLimit)
{
    const auto picture = stagePicture (someStages(), {}, usual);
    const auto peaks = test::boxesOf (picture.drawing, Ink::source, true);
    ASSERT_EQ (peaks.size(), 3u) << "the legend and two stages with limits";
    // From -60 dB: 1 V of 10 V is at -20 dB, 40 dB along; 20 V stops at the limit, 60 dB along, and goes on as notice.
    EXPECT_NEAR (peaks[1].width / peaks[2].width, 40.0 / 60.0, 1e-9);
    const auto beyond = test::boxesOf (picture.drawing, Ink::notice, false);
    ASSERT_EQ (beyond.size(), 2u);
    EXPECT_NEAR (beyond[1].width / peaks[2].width, toDecibels (2.0) / 60.0, 1e-6);
    const auto rms = test::boxesOf (picture.drawing, Ink::result, false);
    ASSERT_EQ (rms.size(), 3u);
    EXPECT_NEAR (rms[1].width / peaks[2].width, 20.0 / 60.0, 1e-9);
}

TEST (StageDrawing, TellsRoomAndWhatIsFirstToClip)
{
    const auto picture = stagePicture (someStages(), {}, usual);
    EXPECT_TRUE (test::hasText (picture.drawing, "20.0 dB"));
    EXPECT_TRUE (test::hasText (picture.drawing, "\u22126.0 dB"));
    EXPECT_TRUE (test::hasText (picture.drawing, "no limit"));
    EXPECT_EQ (picture.sentence, "First to clip, and it does: Main preamp: Gain, \u22126.0 dB");
    ASSERT_EQ (picture.spots.size(), 3u);
    EXPECT_NE (picture.spots[1].sentence.find ("clips by 6.0 dB"), std::string::npos) << picture.spots[1].sentence;
    EXPECT_NE (picture.spots[2].sentence.find ("states no limit"), std::string::npos);
    EXPECT_EQ (picture.columnLength, 3u);
}

TEST (StageDrawing, ALitLampStandsBeforeItsStage)
{
    const std::vector<std::string> lit { "Main preamp: Input" };
    const auto with = stagePicture (someStages(), lit, usual);
    EXPECT_TRUE (test::hasText (with.drawing, "has clipped"));
    EXPECT_FALSE (test::hasText (stagePicture (someStages(), {}, usual).drawing, "has clipped"));
    for (const auto& text : with.drawing.texts)
        EXPECT_EQ (text.isBold, text.text == "Main preamp: Input" || text.text == "\u22126.0 dB") << text.text;
}

TEST (StageDrawing, ThoseWithTheMostRoomAreLeftOutWhereThereAreMany)
{
    StageReading many;
    for (int stage = 1; stage <= 30; ++stage)
        many.stages.push_back (stageOf (std::string ("Stage ").append (std::to_string (stage)), 0.3 * stage));
    const auto picture = stagePicture (many, {}, { 299.0, 150.0, 10.7, LevelUnit::dbv, {} });
    EXPECT_LT (picture.spots.size(), 12u);
    EXPECT_NE (picture.spots.back().sentence.find ("Stage 30"), std::string::npos);
    EXPECT_NE (picture.sentence.find ("with more room not shown"), std::string::npos) << picture.sentence;
}

TEST (StageDrawing, HasRoomAtEverySize)
{
    const std::vector<std::string> lit { "Main preamp: Input" };
    for (const auto& format : test::someFormats())
    {
        const auto picture = stagePicture (someStages(), lit, format);
        EXPECT_EQ (test::pictureFault (picture), "") << format.width;
        EXPECT_EQ (test::xmlFault (svgText (picture.drawing)), "");
    }
}

TEST (StageDrawing, ItsNumbersAreReadBack)
{
    const auto rows = test::csvRows (stageCsv (someStages()));
    ASSERT_EQ (rows.size(), 4u);
    EXPECT_EQ (rows[2][0], "Main preamp: Gain");
    EXPECT_EQ (test::csvNumberAt (rows, 1, "highest_v"), 20.0);
    EXPECT_EQ (rows[3][1], "-inf");
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/HarmonicDrawing.h"

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

/// C4 with three partials: the source 0, -10 and nothing, the result 0, -20 and nothing.
HarmonicReading threePartials()
{
    HarmonicReading reading;
    reading.keyHz = 261.6;
    reading.bars = { { 1.0, 261.6, 0.0, 0.0, 1.0, 0.5, false },
                     { 2.0, 523.2, -10.0, -20.0, 0.316, 0.05, false },
                     { 3.0, 784.8, -HUGE_VAL, -HUGE_VAL, 0.0, 0.0, true } };
    reading.strongest = 0;
    return reading;
}

HarmonicReading withMask()
{
    auto reading = threePartials();
    MaskReading mask { "Reed, 8 ft", Certainty::commonPractice, {}, true, {}, {} };
    MaskWindow first { "harmonic 1", false, false, 261.6, 261.6, -6.0, 6.0, {} };
    first.fit.verdict = MaskVerdict::inside;
    MaskWindow second { "harmonic 2", false, true, 523.2, 523.2, -HUGE_VAL, -25.0, {} };
    second.fit.verdict = MaskVerdict::tooStrong;
    MaskWindow band { "main", true, false, 900.0, 1200.0, -12.0, -6.0, {} };
    band.fit.verdict = MaskVerdict::absent;
    mask.windows = { first, second, band };
    mask.fit.compared = 3;
    mask.fit.outside = 2;
    mask.fit.absent = 1;
    reading.mask = mask;
    return reading;
}

const ReadingFormat usual { 450.0, 330.0, 10.0, LevelUnit::voltsRms, {} };

TEST (HarmonicDrawing, BarsAreAsHighAsTheirLevels)
{
    const auto picture = harmonicPicture (threePartials(), usual);
    const auto results = test::boxesOf (picture.drawing, Ink::result, false);
    ASSERT_EQ (results.size(), 3u) << "the sign of the legend and two bars";
    // From -80 dB at the base line: 80 dB and 60 dB.
    EXPECT_NEAR (results[2].height / results[1].height, 60.0 / 80.0, 1e-9);
    EXPECT_NEAR (results[1].bottom(), results[2].bottom(), 1e-9);
    const auto sources = test::boxesOf (picture.drawing, Ink::source, true);
    ASSERT_EQ (sources.size(), 3u);
    EXPECT_NEAR (sources[2].height / sources[1].height, 70.0 / 80.0, 1e-9);
    EXPECT_GT (sources[1].width, 1.5 * results[1].width) << "wide behind narrow";
}

TEST (HarmonicDrawing, ASpotTellsEachPartial)
{
    const auto picture = harmonicPicture (threePartials(), usual);
    ASSERT_EQ (picture.spots.size(), 3u);
    EXPECT_EQ (picture.spots[1].sentence, "Partial 2, 523 Hz: \u221220.0 dB (35.4 mV rms of 223 mV rms tapped)");
    EXPECT_EQ (picture.spots[2].sentence, "Partial 3, 785 Hz: not in the source");
    EXPECT_EQ (picture.sentence.rfind ("Strongest: partial 1, 262 Hz: 0.0 dB", 0), 0u) << picture.sentence;
    const auto& box = picture.spots[1].box;
    EXPECT_EQ (spotAt (picture, { box.x + 0.5 * box.width, box.y + 5.0 }), 1u);
    EXPECT_FALSE (spotAt (picture, { 440.0, 200.0 }).has_value());
}

TEST (HarmonicDrawing, ATargetIsNamedWithItsOriginAndVerdict)
{
    const auto picture = harmonicPicture (withMask(), usual);
    EXPECT_EQ (picture.sentence, "Reed, 8 ft (common practice, no source): 1 of 3 within tolerance, 1 absent");
    EXPECT_TRUE (test::hasText (picture.drawing, "target"));
    EXPECT_EQ (test::boxesOf (picture.drawing, Ink::target, false).size(), 4u) << "three windows and the legend";
    EXPECT_NE (picture.spots[0].sentence.find ("target \u22126 to 6 dB, inside"), std::string::npos);
    EXPECT_NE (picture.spots[1].sentence.find ("target at most \u221225 dB, outside"), std::string::npos);
    EXPECT_FALSE (test::hasText (harmonicPicture (threePartials(), usual).drawing, "target"));
}

TEST (HarmonicDrawing, HasRoomAtEverySize)
{
    for (const auto& format : test::someFormats())
    {
        const auto picture = harmonicPicture (withMask(), format);
        EXPECT_EQ (test::pictureFault (picture), "") << format.width;
        EXPECT_EQ (test::xmlFault (svgText (picture.drawing)), "");
    }
}

TEST (HarmonicDrawing, ASilentKeyIsAnsweredInWords)
{
    const auto picture = harmonicPicture (HarmonicReading {}, usual);
    EXPECT_TRUE (picture.spots.empty());
    EXPECT_NE (picture.sentence.find ("No generator"), std::string::npos);
}

TEST (HarmonicDrawing, ItsNumbersAreReadBack)
{
    const auto rows = test::csvRows (harmonicCsv (withMask()));
    ASSERT_EQ (rows.size(), 4u);
    EXPECT_EQ (test::csvNumberAt (rows, 1, "frequency_hz"), 523.2);
    EXPECT_EQ (test::csvNumberAt (rows, 1, "result_peak_v"), 0.05);
    EXPECT_EQ (test::csvNumberAt (rows, 1, "target_highest_db"), -25.0);
    EXPECT_EQ (rows[2].back(), "outside");
    EXPECT_EQ (rows[3][4], "-inf");
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/PlotAxis.h"

#include "Sheet/ReadingWords.h"
#include "Sheet/TextWidth.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

TEST (PlotAxis, PlacesValuesAndKeepsThemWithin)
{
    const PlotAxis level { -80.0, 0.0, 200.0, 100.0, false };
    EXPECT_DOUBLE_EQ (level.at (-40.0), 150.0);
    EXPECT_DOUBLE_EQ (level.at (20.0), 100.0);
    EXPECT_DOUBLE_EQ (level.at (-HUGE_VAL), 200.0);
    const PlotAxis frequency { 20.0, 20000.0, 0.0, 300.0, true };
    EXPECT_NEAR (frequency.at (200.0), 100.0, 1e-9);
}

TEST (PlotAxis, MarksAreAsManyAsThereIsRoomFor)
{
    EXPECT_EQ (decibelMarks ({ -60.0, 0.0, 300.0, 0.0, false }, 10.0, "dB").size(), 7u); // every 10 dB
    EXPECT_EQ (decibelMarks ({ -30.0, 0.0, 300.0, 0.0, false }, 10.0, "dB").size(), 7u); // every 5 dB
    EXPECT_EQ (decibelMarks ({ -60.0, 0.0, 60.0, 0.0, false }, 10.0, "dB").size(), 4u);  // every 20 dB
    EXPECT_EQ (decibelMarks ({ -60.0, 0.0, 60.0, 0.0, false }, 10.0, "dB").front().label, "0 dB");
    EXPECT_EQ (hertzMarks ({ 20.0, 20000.0, 0.0, 300.0, true }).back().label, "20k");
}

TEST (PlotAxis, LabelsThatWouldTouchAreLeftOut)
{
    Drawing drawing;
    DrawingPen pen (drawing);
    const PlotAxis axis { 20.0, 20000.0, 0.0, 120.0, true };
    ruleUp (pen, { 0.0, 0.0, 120.0, 50.0 }, axis, hertzMarks (axis), 10.0, 62.0);
    EXPECT_EQ (drawing.areas.size(), 10u) << "every line stays";
    EXPECT_LT (drawing.texts.size(), 10u);
    for (std::size_t text = 1; text < drawing.texts.size(); ++text)
        EXPECT_FALSE (textBox (drawing.texts[text]).meets (textBox (drawing.texts[text - 1])));
}

TEST (ReadingWords, SpeakPlainly)
{
    EXPECT_EQ (signedText (-0.04, 1), "0.0");
    EXPECT_EQ (signedText (-7.25, 1), "\u22127.2");
    EXPECT_EQ (decibelText (-HUGE_VAL), "none");
    EXPECT_EQ (partialText (1.5), "1.5");
    EXPECT_EQ (partialText (3.0), "3");
    EXPECT_EQ (keyText (60, 261.63), "C4, 262 Hz");
    EXPECT_EQ (originText (Certainty::commonPractice, {}), "common practice, no source");
    EXPECT_EQ (originText (Certainty::published, "A. Author"), "published: A. Author");
    MaskFit fit;
    EXPECT_EQ (fitText (fit), "nothing of it on this key");
    fit.compared = 10;
    EXPECT_EQ (fitText (fit), "all 10 within tolerance");
    fit.outside = 2;
    EXPECT_EQ (fitText (fit), "8 of 10 within tolerance");
}

TEST (DrawingPen, ShortensWhatDoesNotFit)
{
    EXPECT_EQ (fittedText ("short", 10.0, false, 100.0), "short");
    const auto shortened =
        fittedText ("Main preamp: \u03a9\u03a9\u03a9\u03a9\u03a9\u03a9\u03a9\u03a9\u03a9", 10.0, false, 110.0);
    EXPECT_TRUE (shortened.ends_with ("...")) << shortened;
    EXPECT_LE (textWidth (shortened, 10.0, false), 110.0);
    EXPECT_EQ (fittedText ("anything", 10.0, false, 3.0), "");
}

} // namespace
} // namespace stopwright

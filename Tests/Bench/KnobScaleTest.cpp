// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/KnobScale.h"

#include "Bench/SmallCard.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

using test::smallCard;

KnobScale resistorScale (Series series)
{
    return { smallCard(), { CardKnob::Place::part, "R1", KnobKind::value }, series };
}

KnobScale positionScale()
{
    return { smallCard(), { CardKnob::Place::part, "P1", KnobKind::position }, Series::e12 };
}

KnobScale levelScale()
{
    return { smallCard(), { CardKnob::Place::tapLevel, "W1", KnobKind::value }, Series::e12 };
}

KnobScale tremulantScale (CardKnob::Place place)
{
    return { smallCard(), { place, "Tremulant", KnobKind::value }, Series::e12 };
}

} // namespace

TEST (KnobScale, ALevelSteppedUpAndDownIsTheSameAgain)
{
    const auto scale = levelScale();
    for (const double start : { 1.0, 0.5012, 2.818 }) // 0, -6 and 9 dB re 1 V, to four digits
    {
        double value = start;
        for (int step = 0; step < 30; ++step)
            value = scale.stepped (value, -1);
        EXPECT_NEAR (value / start, std::pow (10.0, -15.0 / 20.0), 1e-3);
        for (int step = 0; step < 30; ++step)
            value = scale.stepped (value, 1);
        EXPECT_DOUBLE_EQ (value, start);
    }
    EXPECT_GT (scale.stepped (0.0, 1), 0.0);
}

TEST (KnobScale, StepsThroughThePreferredSeries)
{
    // IEC 60063: E12 ... 39 47 56 ..., E24 ... 43 47 51 ...
    EXPECT_EQ (resistorScale (Series::e12).stepped (47e3, 1), 56e3);
    EXPECT_EQ (resistorScale (Series::e12).stepped (47e3, -12), 4.7e3);
    EXPECT_EQ (resistorScale (Series::e24).stepped (47e3, -1), 43e3);
    EXPECT_EQ (resistorScale (Series::e12).stepped (50e3, 1), 56e3);
    EXPECT_EQ (resistorScale (Series::e12).stepped (50e3, -1), 47e3);
}

TEST (KnobScale, StopsAtTheEndsOfTheRange)
{
    EXPECT_EQ (resistorScale (Series::e12).stepped (ValueLimits::resistance.highest, 3),
               ValueLimits::resistance.highest);
    EXPECT_EQ (positionScale().stepped (1.0, 4), 1.0);
    EXPECT_EQ (positionScale().stepped (0.02, -2), 0.0);
}

TEST (KnobScale, PositionGoesInTwentieths)
{
    EXPECT_EQ (positionScale().stepped (0.5, 1), 0.55);
    EXPECT_EQ (positionScale().stepped (0.52, 1), 0.55);
    EXPECT_EQ (positionScale().stepped (0.52, -1), 0.5);
}

TEST (KnobScale, ALevelGoesInHalfDecibels)
{
    EXPECT_NEAR (levelScale().stepped (2.0, 2), 2.239, 1e-9);
    EXPECT_NEAR (levelScale().stepped (2.0, 40), 19.95, 1e-9);
}

TEST (KnobScale, ARateGoesInTenthsOfAHertz)
{
    const auto scale = tremulantScale (CardKnob::Place::tremulantRate);
    EXPECT_EQ (scale.stepped (6.0, 3), 6.3);
    EXPECT_EQ (scale.stepped (6.04, 1), 6.1);
    EXPECT_EQ (scale.stepped (0.2, -5), 0.1);
    EXPECT_EQ (scale.stepped (19.9, 5), 20.0);
    EXPECT_EQ (scale.moved (6.0, 0.004), 6.008);
    EXPECT_NEAR (scale.angleOf (2.5), 0.5 * std::numbers::pi, 1e-9); // one turn is ten hertz
    EXPECT_NEAR (scale.angleOf (12.5), 0.5 * std::numbers::pi, 1e-9);
    EXPECT_EQ (scale.markAngles().size(), 10u);
    EXPECT_EQ (scale.textOf (6.0), "6.00 Hz");
    EXPECT_EQ (scale.parse ("5.5 Hz"), 5.5);
    EXPECT_EQ (scale.parse ("5.5"), 5.5);
    EXPECT_THROW (scale.parse ("21"), Error);
    EXPECT_THROW (scale.parse ("0"), Error);
}

TEST (KnobScale, ADepthGoesInTwentieths)
{
    const auto scale = tremulantScale (CardKnob::Place::tremulantDepth);
    EXPECT_EQ (scale.stepped (0.3, 1), 0.35);
    EXPECT_EQ (scale.stepped (0.9, 4), 0.95);
    EXPECT_EQ (scale.textOf (0.3), "30 %");
    EXPECT_EQ (scale.longTextOf (0.3), "30 %");
    EXPECT_EQ (scale.parse ("30"), 0.3);
    EXPECT_EQ (scale.parse ("1"), 0.01);
    EXPECT_EQ (scale.parse ("0.5"), 0.005);
    EXPECT_THROW (scale.parse ("96 %"), Error);
}

TEST (KnobScale, MovesWithoutStepsAndKeepsFourDigits)
{
    EXPECT_EQ (resistorScale (Series::e12).moved (10e3, 1.0 / 3.0), 21540.0);
    EXPECT_EQ (positionScale().moved (0.5, 0.1), 0.55);
}

TEST (KnobScale, OneTurnIsADecade)
{
    const auto scale = resistorScale (Series::e12);
    EXPECT_NEAR (scale.angleOf (47e3), scale.angleOf (4.7e3), 1e-9);
    EXPECT_NEAR (scale.angleOf (std::sqrt (10.0)), std::numbers::pi, 1e-9);
    EXPECT_EQ (scale.markAngles().size(), 12u);
    EXPECT_EQ (resistorScale (Series::e96).markAngles().size(), 96u);
}

TEST (KnobScale, ReadsAndWritesAsOnTheDrawing)
{
    EXPECT_EQ (resistorScale (Series::e12).textOf (4700.0), "4k7");
    EXPECT_EQ (resistorScale (Series::e12).parse ("4k7"), 4700.0);
    EXPECT_EQ (resistorScale (Series::e12).textOf (180.0), "180 \u03a9");
    EXPECT_EQ (resistorScale (Series::e12).parse ("180 \u03a9"), 180.0);
    EXPECT_EQ (positionScale().textOf (0.5), "50 %");
    EXPECT_EQ (positionScale().parse ("25 %"), 0.25);
    EXPECT_EQ (positionScale().parse ("0.25"), 0.25);
    EXPECT_EQ (levelScale().textOf (2.0), "2.00 V");
    EXPECT_EQ (levelScale().parse ("1.5"), 1.5);
}

TEST (KnobScale, RefusesWhatIsNoValueInASentence)
{
    for (const auto* text : { "4x7", "", "nan", "1e400", "-4k7" })
    {
        try
        {
            resistorScale (Series::e12).parse (text);
            ADD_FAILURE() << text;
        }
        catch (const Error& error)
        {
            EXPECT_EQ (std::string (error.what()).back(), '.') << error.what();
        }
    }
    EXPECT_THROW (positionScale().parse ("101 %"), Error);
    EXPECT_THROW (levelScale().parse ("0"), Error);
}

} // namespace stopwright

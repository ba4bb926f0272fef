// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StockResistors.h"

#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace stopwright
{

namespace
{

StockChoices choose (const std::vector<double>& parts, double wishedOhms)
{
    return chooseFromStock (parts, wishedOhms,
                            [wishedOhms] (double ohms) { return std::abs (std::log (ohms / wishedOhms)); });
}

/// Percent: the worst that the series does to any wish.
double worstPercent (Series series)
{
    double worst = 0.0;
    for (double wish = 10e3; wish < 100e3; wish *= 1.0001)
    {
        const auto choice =
            chooseFromSeries (series, wish, [wish] (double ohms) { return std::abs (std::log (ohms / wish)); });
        worst = std::max (worst, 100.0 * std::abs (choice.ohms / wish - 1.0));
    }
    return worst;
}

} // namespace

// Closed form: 20 log (wish / sum).
TEST (StockResistors, PairsInSeries)
{
    const std::vector<double> parts { 8.2e3, 47e3, 180e3, 330e3 };

    struct Value
    {
        double wish;
        double first;
        double second;
        double db;
    };

    for (const Value& value : { Value { 94e3, 47e3, 47e3, 0.0 }, Value { 188e3, 180e3, 8.2e3, -0.009 },
                                Value { 376e3, 330e3, 47e3, -0.023 } })
    {
        const auto choice = *choose (parts, value.wish).series;
        EXPECT_EQ (choice.joined, ResistorChoice::Joined::series);
        EXPECT_EQ (choice.first, value.first);
        EXPECT_EQ (choice.second, value.second);
        EXPECT_NEAR (virtualEarthErrorDb (value.wish, choice), value.db, 0.0005);
    }
}

// 220 k // 1.2 M = 185.9 k, closed form.
TEST (StockResistors, PairsInParallel)
{
    const auto choice = *choose ({ 220e3, 1.2e6 }, 188e3).parallel;
    EXPECT_EQ (choice.first, 220e3);
    EXPECT_EQ (choice.second, 1.2e6);
    EXPECT_NEAR (choice.ohms, 185.9e3, 50.0);
    EXPECT_NEAR (virtualEarthErrorDb (188e3, choice), 0.097, 0.0005);
}

TEST (StockResistors, TheBestOfEachKindByTrial)
{
    const std::vector<double> parts { 10e3, 22e3, 47e3, 82e3, 150e3, 330e3 };
    for (const double wish : { 1e3, 9e3, 31e3, 60e3, 99e3, 200e3, 650e3, 1e6 })
    {
        const auto choices = choose (parts, wish);
        double series = 1e9;
        double parallel = 1e9;
        double single = 1e9;
        for (const double a : parts)
        {
            single = std::min (single, std::abs (std::log (a / wish)));
            for (const double b : parts)
            {
                series = std::min (series, std::abs (std::log ((a + b) / wish)));
                parallel = std::min (parallel, std::abs (std::log (a * b / (a + b) / wish)));
            }
        }
        EXPECT_NEAR (std::abs (std::log (choices.single->ohms / wish)), single, 1e-12) << wish;
        EXPECT_NEAR (std::abs (std::log (choices.series->ohms / wish)), series, 1e-12) << wish;
        EXPECT_NEAR (std::abs (std::log (choices.parallel->ohms / wish)), parallel, 1e-12) << wish;
    }
}

// The widest steps of IEC 60063:2015 split evenly as a ratio: sqrt (15 / 13) and sqrt (1.5 / 1.2).
TEST (StockResistors, WorstRoundingOfASeries)
{
    EXPECT_NEAR (worstPercent (Series::e24), 7.42, 0.02);
    EXPECT_NEAR (worstPercent (Series::e12), 11.80, 0.02);
}

// Half way between 1.3 and 1.5, and between 1.2 and 1.5: 7.14 and 11.1 %.
TEST (StockResistors, HalfWayBetweenTwoMembers)
{
    const auto percent = [] (Series series, double wish)
    {
        const auto cost = [wish] (double ohms) { return std::abs (std::log (ohms / wish)); };
        return 100.0 * (chooseFromSeries (series, wish, cost).ohms / wish - 1.0);
    };
    EXPECT_NEAR (percent (Series::e24, 14e3), 7.14, 0.005);
    EXPECT_NEAR (percent (Series::e12, 13.5e3), 11.1, 0.02);
}

TEST (StockResistors, RefusesAPartOfNothing)
{
    EXPECT_THROW (choose ({ 47e3, 0.0 }, 47e3), Error);
    EXPECT_FALSE (choose ({}, 47e3).single);
}

} // namespace stopwright

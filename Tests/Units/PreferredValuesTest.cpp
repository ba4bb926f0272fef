// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/PreferredValues.h"
#include "Units/DecimalDigits.h"
#include "Units/Error.h"

#include "Support/Random.h"
#include "Support/Tolerances.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <map>

namespace stopwright
{

namespace
{

constexpr Series allSeries[] = { Series::e6, Series::e12, Series::e24, Series::e48, Series::e96 };

std::size_t sizeOf (Series series)
{
    return mantissas (series).size();
}

} // namespace

TEST (PreferredValues, SeriesHaveAsManyMembersAsTheirNameSays)
{
    EXPECT_EQ (sizeOf (Series::e6), 6U);
    EXPECT_EQ (sizeOf (Series::e12), 12U);
    EXPECT_EQ (sizeOf (Series::e24), 24U);
    EXPECT_EQ (sizeOf (Series::e48), 48U);
    EXPECT_EQ (sizeOf (Series::e96), 96U);
}

// IEC 60063:2015, table 2: E48 and E96 are the geometric series rounded to three digits, without exception.
TEST (PreferredValues, FineSeriesAreTheRoundedGeometricOnes)
{
    for (const auto series : { Series::e48, Series::e96 })
    {
        const auto members = mantissas (series);
        for (std::size_t i = 0; i < members.size(); ++i)
        {
            const auto exact = std::pow (10.0, static_cast<double> (i) / static_cast<double> (members.size()));
            EXPECT_EQ (members[i], std::round (100.0 * exact) / 100.0);
        }
    }
}

// IEC 60063:2015, table 1: in E24 eight members are off the rounded geometric series; the key is what rounding gives.
TEST (PreferredValues, CoarseSeriesHaveTheirEightIrregularMembers)
{
    const std::map<double, double> irregular { { 2.6, 2.7 }, { 2.9, 3.0 }, { 3.2, 3.3 }, { 3.5, 3.6 },
                                               { 3.8, 3.9 }, { 4.2, 4.3 }, { 4.6, 4.7 }, { 8.3, 8.2 } };
    const auto members = mantissas (Series::e24);
    std::size_t met = 0;
    for (std::size_t i = 0; i < members.size(); ++i)
    {
        const auto rounded = std::round (10.0 * std::pow (10.0, static_cast<double> (i) / 24.0)) / 10.0;
        const auto exception = irregular.find (rounded);
        met += exception != irregular.end() ? 1U : 0U;
        EXPECT_EQ (members[i], exception != irregular.end() ? exception->second : rounded);
    }
    EXPECT_EQ (met, 8U);
}

TEST (PreferredValues, CoarserSeriesAreEverySecondMember)
{
    const auto isEverySecond = [] (Series coarse, Series fine)
    {
        for (std::size_t i = 0; i < sizeOf (coarse); ++i)
            EXPECT_EQ (mantissas (coarse)[i], mantissas (fine)[2 * i]);
    };
    isEverySecond (Series::e6, Series::e12);
    isEverySecond (Series::e12, Series::e24);
    isEverySecond (Series::e48, Series::e96);
}

TEST (PreferredValues, NearestTellsItsError)
{
    const auto nearest = nearestPreferred (5000.0, Series::e12);
    EXPECT_EQ (nearest.value, 4700.0);
    EXPECT_NEAR (nearest.errorPercent, -6.0, tolerance::algebra);
    EXPECT_NEAR (nearest.errorDb, -0.5374429, 1e-7);   // 20 log10 0.94
    EXPECT_NEAR (nearest.errorCents, -107.121, 0.001); // 1200 log2 0.94
}

TEST (PreferredValues, NearestIsByRatioNotByDifference)
{
    // Between 1.0 and 1.5 of E6 the ratios meet at sqrt (1.5) = 1.2247, the differences at 1.25.
    EXPECT_EQ (nearestPreferred (1.224, Series::e6).value, 1.0);
    EXPECT_EQ (nearestPreferred (1.226, Series::e6).value, 1.5);
    EXPECT_EQ (nearestPreferred (9.5, Series::e6).value, 10.0) << "across the decade";
    EXPECT_EQ (nearestPreferred (0.97, Series::e12).value, 1.0);
}

// IEC 60063 values are written in decimals, so the double has to be the one that the decimals name.
TEST (PreferredValues, MembersAreTheDecimalNumbersToTheLastBit)
{
    EXPECT_EQ (nearestPreferred (4.8e-9, Series::e12).value, 4.7e-9);
    EXPECT_EQ (nearestPreferred (2.3e-8, Series::e12).value, 2.2e-8);
    EXPECT_EQ (nearestPreferred (6.7e-12, Series::e12).value, 6.8e-12);
    for (const auto series : allSeries)
        for (double value = 1e-18; value < 0.9e18; value = nextPreferred (value, series, 1))
            EXPECT_LE (DecimalDigits::shortest (value).digits.size(), 3U) << value;
}

TEST (PreferredValues, EveryMemberIsItsOwnNearest)
{
    for (const auto series : allSeries)
        for (int decade = -12; decade <= 7; ++decade)
            for (const double mantissa : mantissas (series))
            {
                const auto value = mantissa * std::pow (10.0, decade);
                const auto nearest = nearestPreferred (value, series);
                EXPECT_DOUBLE_EQ (nearest.value, value);
                EXPECT_NEAR (nearest.errorPercent, 0.0, 1e-10);
            }
}

TEST (PreferredValues, NoMemberIsNearerThanTheNearest)
{
    Random random (60063);
    for (int trial = 0; trial < 2000; ++trial)
    {
        const auto wish = random.logUniform (1e-12, 1e7);
        for (const auto series : allSeries)
        {
            const auto nearest = nearestPreferred (wish, series);
            const auto distance = std::abs (nearest.errorDb);
            const auto above = nextPreferred (nearest.value, series, 1);
            const auto below = nextPreferred (nearest.value, series, -1);
            EXPECT_LE (distance, 20.0 * std::log10 (above / wish) + 1e-9);
            EXPECT_LE (distance, 20.0 * std::log10 (wish / below) + 1e-9);
        }
    }
}

TEST (PreferredValues, StepsGoThroughTheDecades)
{
    EXPECT_EQ (nextPreferred (4700.0, Series::e12, 1), 5600.0);
    EXPECT_EQ (nextPreferred (4700.0, Series::e12, -1), 3900.0);
    EXPECT_EQ (nextPreferred (8.2, Series::e12, 1), 10.0);
    EXPECT_EQ (nextPreferred (1.0, Series::e12, -1), 0.82);
    EXPECT_EQ (nextPreferred (1.0, Series::e24, 24 * 6), 1e6);
    EXPECT_EQ (nextPreferred (1e6, Series::e96, -96 * 12), 1e-6);
    EXPECT_EQ (nextPreferred (4700.0, Series::e24, 0), 4700.0);
}

TEST (PreferredValues, StepsFromBetweenLeadToTheAdjacentMember)
{
    EXPECT_EQ (nextPreferred (5000.0, Series::e12, 1), 5600.0);
    EXPECT_EQ (nextPreferred (5000.0, Series::e12, -1), 4700.0);
    EXPECT_EQ (nextPreferred (5000.0, Series::e12, 2), 6800.0);
    EXPECT_EQ (nextPreferred (5000.0, Series::e12, -2), 3900.0);
    EXPECT_EQ (nextPreferred (5000.0, Series::e12, 0), 4700.0);
    EXPECT_EQ (nextPreferred (4700.0 * (1.0 + 1e-12), Series::e12, 1), 5600.0) << "rounding is no step";
    EXPECT_EQ (nextPreferred (4700.0 * (1.0 - 1e-12), Series::e12, -1), 3900.0);
    EXPECT_EQ (nextPreferred (4700.0 * (1.0 + 1e-6), Series::e12, -1), 4700.0);
}

TEST (PreferredValues, StepsUpAndDownAreInverse)
{
    for (const auto series : allSeries)
        for (double value = 1e-12; value < 1e7; value = nextPreferred (value, series, 1))
            EXPECT_EQ (nextPreferred (nextPreferred (value, series, 7), series, -7), value);
}

TEST (PreferredValues, RefusesWhatHasNone)
{
    constexpr auto infinity = std::numeric_limits<double>::infinity();
    for (const double value : { 0.0, -4700.0, 1e-19, 1e19, infinity, -infinity, std::nan ("") })
    {
        EXPECT_THROW (nearestPreferred (value, Series::e12), Error) << value;
        EXPECT_THROW (nextPreferred (value, Series::e12, 1), Error) << value;
    }

    EXPECT_THROW (nextPreferred (1.0, Series::e6, 1000), Error);
    EXPECT_THROW (nextPreferred (1.0, Series::e6, std::numeric_limits<int>::max()), Error);
    EXPECT_THROW (nextPreferred (1.0, Series::e6, std::numeric_limits<int>::min()), Error);
    EXPECT_EQ (nearestPreferred (1e-18, Series::e96).value, 1e-18) << "the ends are in";
    EXPECT_EQ (nearestPreferred (1e18, Series::e96).value, 1e18);
}

} // namespace stopwright

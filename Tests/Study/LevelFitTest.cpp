// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/LevelFit.h"

#include "Support/Random.h"
#include "Support/Tolerances.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace stopwright
{

TEST (LevelFit, TakesTheMeanDifferenceOut)
{
    // Worked by hand: differences -21, -20.5, -22, -20, -23.
    const std::array predicted { 0.0, -3.0, -6.0, -12.0, -20.0 };
    const std::array measured { -21.0, -23.5, -28.0, -32.0, -43.0 };
    const std::array residuals { 0.3, 0.8, -0.7, 1.3, -1.7 };
    const auto fit = fitLevels (predicted, measured);
    EXPECT_NEAR (fit.offsetDb, -21.3, tolerance::algebra * 100.0);
    ASSERT_EQ (fit.residualsDb.size(), residuals.size());
    for (std::size_t i = 0; i < residuals.size(); ++i)
        EXPECT_NEAR (fit.residualsDb[i], residuals[i], tolerance::algebra * 100.0);
    EXPECT_NEAR (fit.rmsDb, std::sqrt (1.16), tolerance::algebra); // 1.077
    EXPECT_NEAR (fit.largestDb, 1.7, tolerance::algebra * 100.0);
}

TEST (LevelFit, NoOtherOffsetIsBetter)
{
    Random random (20240701);
    for (int round = 0; round < 50; ++round)
    {
        std::vector<double> wanted;
        std::vector<double> found;
        for (int count = random.integer (1, 12); count > 0; --count)
        {
            wanted.push_back (random.uniform (-60.0, 6.0));
            found.push_back (random.uniform (-90.0, 10.0));
        }
        const auto fit = fitLevels (wanted, found);
        for (double offset = -120.0; offset < 120.0; offset += 0.05)
        {
            double square = 0.0;
            for (std::size_t i = 0; i < wanted.size(); ++i)
                square += std::pow (found[i] - wanted[i] - offset, 2.0);
            ASSERT_GE (std::sqrt (square / static_cast<double> (wanted.size())), fit.rmsDb - 1e-9);
        }
    }
}

TEST (LevelFit, OfNothingIsNothing)
{
    const auto fit = fitLevels ({}, {});
    EXPECT_EQ (fit.offsetDb, 0.0);
    EXPECT_EQ (fit.rmsDb, 0.0);
    EXPECT_TRUE (fit.residualsDb.empty());
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ScopeSetting.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (ScopeSetting, StepsAreOneTwoFive)
{
    EXPECT_DOUBLE_EQ (scopeStep (1.0), 1.0);
    EXPECT_DOUBLE_EQ (scopeStep (1.01), 2.0);
    EXPECT_DOUBLE_EQ (scopeStep (2.0), 2.0);
    EXPECT_DOUBLE_EQ (scopeStep (3.0), 5.0);
    EXPECT_DOUBLE_EQ (scopeStep (5.5), 10.0);
    EXPECT_DOUBLE_EQ (scopeStep (0.00021), 0.0005);
    const auto steps = scopeSteps (1e-3, 0.1);
    const std::vector<double> wanted { 1e-3, 2e-3, 5e-3, 0.01, 0.02, 0.05, 0.1 };
    ASSERT_EQ (steps.size(), wanted.size());
    for (std::size_t step = 0; step < steps.size(); ++step)
        EXPECT_DOUBLE_EQ (steps[step], wanted[step]);
}

TEST (ScopeSetting, TheWaveIsSeenWhole)
{
    for (const double peak : { 0.0011, 0.1, 0.36, 0.37, 1.0, 7.3 })
    {
        const auto setting = automaticSetting (peak, 261.6);
        EXPECT_LE (peak, 4.0 * setting.voltsPerDivision);
        EXPECT_GT (peak, 1.2 * setting.voltsPerDivision) << "no smaller than it need be";
        EXPECT_GE (10.0 * setting.secondsPerDivision, 2.0 / 261.6);
        EXPECT_LE (10.0 * setting.secondsPerDivision, 6.0 / 261.6);
    }
    EXPECT_DOUBLE_EQ (automaticSetting (0.0, 100.0).voltsPerDivision, 1.0);
    EXPECT_EQ (automaticSetting (0.0, 0.0), ScopeSetting {}) << "nothing sounds";
}

} // namespace
} // namespace stopwright

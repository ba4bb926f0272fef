// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/Tremulant.h"

#include "Sound/TestCards.h"
#include "Sound/TestTones.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = 48000.0;
constexpr std::size_t cycle = 8000; // at 6 Hz

double swingDb (const std::vector<double>& gains)
{
    const auto [least, most] = std::minmax_element (gains.begin(), gains.end());
    return toDecibels (*most / *least);
}

// Depth 0.1, 0.2, 0.3, 0.5: 1.743, 3.522, 5.377, 9.542 dB from peak to peak (closed form
// 20 log10 ((1 + m) / (1 - m))).
TEST (Tremulant, SwingsAsFarAsItsDepthSays)
{
    for (const auto& [depth, expectedDb] :
         { std::pair { 0.1, 1.743 }, std::pair { 0.2, 3.522 }, std::pair { 0.3, 5.377 }, std::pair { 0.5, 9.542 } })
    {
        Tremulant tremulant ({ .rateHz = 6.0, .depth = depth }, true, rateHz);
        const auto gains = throughWhole (tremulant, std::vector<double> (cycle, 1.0));
        EXPECT_NEAR (swingDb (gains), expectedDb, 0.0006) << depth;
    }
}

TEST (Tremulant, IsOnePlusDepthTimesASine)
{
    Tremulant tremulant ({ .rateHz = 6.0, .depth = 0.3 }, true, rateHz);
    const auto gains = throughWhole (tremulant, std::vector<double> (10 * cycle, 2.0));
    for (std::size_t i = 0; i < gains.size(); i += 777)
        ASSERT_NEAR (gains[i], 2.0 + 0.6 * std::sin (2.0 * std::numbers::pi * static_cast<double> (i) / cycle), 1e-9);
}

TEST (Tremulant, PassesUntouchedWhenOff)
{
    Tremulant tremulant ({ .rateHz = 6.0, .depth = 0.3 }, false, rateHz);
    const std::vector<double> in (cycle, 0.7);
    EXPECT_EQ (throughWhole (tremulant, in), in);
}

// The steepest that a ramp of 0.95 in 50 ms and a swing at 50 Hz can be together, per sample: 0.95 (1 / 2400 + 2 pi 50 /
// 48000), closed form.
TEST (Tremulant, NeverJumps)
{
    Random random (51);
    Tremulant tremulant ({ .rateHz = 6.0, .depth = 0.3 }, true, rateHz);
    double last = 1.0;
    for (int change = 0; change < 200; ++change)
    {
        tremulant.setOn (random.chance (0.5));
        tremulant.setTarget ({ .rateHz = random.uniform (-10.0, 80.0), .depth = random.uniform (-0.5, 1.5) });
        std::vector<double> gains (static_cast<std::size_t> (random.integer (1, 4000)), 1.0);
        tremulant.process (gains);
        gains.insert (gains.begin(), last);
        EXPECT_LT (largestStep (gains), 0.95 * (1.0 / 2400.0 + 2.0 * std::numbers::pi * 50.0 / rateHz) + 1e-9);
        last = gains.back();
    }
}

TEST (Tremulant, RunsToNewSettingsInFiftyMilliseconds)
{
    Tremulant tremulant ({ .rateHz = 6.0, .depth = 0.1 }, false, rateHz);
    tremulant.setTarget ({ .rateHz = 5.0, .depth = 0.5 });
    tremulant.setTarget ({ .rateHz = std::numeric_limits<double>::quiet_NaN(),
                           .depth = std::numeric_limits<double>::infinity() }); // ignored
    tremulant.setOn (true);
    throughWhole (tremulant, std::vector<double> (2400, 1.0));
    const auto gains = throughWhole (tremulant, std::vector<double> (9600, 1.0));
    EXPECT_NEAR (swingDb (gains), 9.542, 0.0006);
    EXPECT_NEAR (gains.front(), throughWhole (tremulant, std::vector<double> (1, 1.0)).front(), 1e-9); // 0.2 s on
}

TEST (Tremulant, DoesNotCareHowTheStreamIsCutAndGoesOnFromAnother)
{
    Random random (52);
    const std::vector<double> in (5000, 1.0);
    Tremulant whole ({ .rateHz = 7.0, .depth = 0.4 }, false, rateHz);
    Tremulant pieces ({ .rateHz = 7.0, .depth = 0.4 }, false, rateHz);
    whole.setOn (true);
    pieces.setOn (true);
    EXPECT_EQ (throughWhole (whole, in), throughPieces (pieces, in, random)); // to the last bit

    Tremulant other ({ .rateHz = 7.0, .depth = 0.4 }, false, rateHz);
    other.copyStateFrom (whole);
    EXPECT_EQ (throughWhole (other, in), throughWhole (whole, in));
    whole.reset();
    EXPECT_EQ (throughWhole (whole, in).front(), 1.0);
}

} // namespace
} // namespace stopwright

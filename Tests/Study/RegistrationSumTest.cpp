// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/RegistrationSum.h"

#include "Study/LoadedStops.h"
#include "Study/PolarityCheck.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

namespace stopwright::test
{

namespace
{

using Tone = std::vector<RailPartial>;

Tone sine (double volts, double degrees, double hz = 220.0)
{
    // Half a turn exactly, so that nothing is left of the sum.
    const std::complex<double> turned =
        degrees == 180.0 ? std::complex<double> (-1.0) : std::polar (1.0, degrees * std::numbers::pi / 180.0);
    return { { 1.0, hz, {}, volts * turned } };
}

} // namespace

// 20 log |1 + a e^(j angle)|, closed form.
TEST (RegistrationSum, TwoCoherentStopsAtAnAngle)
{
    struct Value
    {
        double second;
        double degrees;
        double db;
    };

    const double half = std::pow (10.0, -6.0 / 20.0); // 6 dB lower
    for (const Value& value : { Value { 1.0, 0.0, 6.021 }, Value { 1.0, 45.0, 5.333 }, Value { 1.0, 90.0, 3.010 },
                                Value { 1.0, 120.0, 0.0 }, Value { 1.0, 150.0, -5.719 }, Value { 1.0, 170.0, -15.173 },
                                Value { half, 180.0, -6.04 }, Value { half, 150.0, -4.17 } })
    {
        const auto sum = addRegistration (std::array { sine (1.0, 0.0), sine (value.second, value.degrees) });
        EXPECT_NEAR (sum.reStrongestDb(), value.db, value.second < 1.0 ? 0.005 : 0.0005) << value.degrees;
        ASSERT_EQ (sum.partials.size(), 1U);
    }
    const auto nothing = addRegistration (std::array { sine (1.0, 0.0), sine (1.0, 180.0) });
    EXPECT_EQ (nothing.reStrongestDb(), -std::numeric_limits<double>::infinity());
    EXPECT_EQ (nothing.gainDb(), -std::numeric_limits<double>::infinity());
}

TEST (RegistrationSum, UnlikePitchesAddAsPowers)
{
    const auto sum = addRegistration (std::array { sine (3.0, 0.0, 220.0), sine (4.0, 180.0, 221.0) });
    EXPECT_NEAR (sum.gainDb(), 0.0, 1e-12);
    EXPECT_NEAR (sum.sum.rmsVolts, 5.0 / std::numbers::sqrt2, 1e-12);
    EXPECT_TRUE (sum.partials.empty());
    EXPECT_TRUE (mostCancelled (sum, 3).empty());
}

TEST (RegistrationSum, ListsWhatCancelsAndReinforcesMost)
{
    const Tone one {
        { 1.0, 100.0, {}, 1.0 }, { 2.0, 200.0, {}, 1.0 }, { 3.0, 300.0, {}, 0.1 }, { 4.0, 400.0, {}, 2.0 }
    };
    const Tone other {
        { 1.0, 100.0, {}, 1.0 }, { 2.0, 200.0, {}, -1.0 }, { 3.0, 300.0, {}, -0.1 }, { 5.0, 500.0, {}, 1.0 }
    };
    const auto sum = addRegistration (std::array { one, other });
    ASSERT_EQ (sum.partials.size(), 3U);
    const auto cancelled = mostCancelled (sum, 5);
    ASSERT_EQ (cancelled.size(), 2U);
    EXPECT_EQ (cancelled[0].harmonic, 2.0);
    EXPECT_EQ (cancelled[1].harmonic, 3.0);
    const auto reinforced = mostReinforced (sum, 5);
    ASSERT_EQ (reinforced.size(), 1U);
    EXPECT_NEAR (reinforced[0].gainDb(), 3.010, 0.0005); // 20 log (2 / sqrt 2)
}

// Squares of one divider chain at 8 and 4 ft, C3 and C4 held: the generator of C4 sounds twice. Octaves of a square have
// no partial in common, so that rms = sqrt (1 + 4 + 1) = 2.449 against sqrt (4) by powers; closed form.
TEST (RegistrationSum, SharedGeneratorsAddInAmplitude)
{
    auto organ = emptyOrgan (virtualEarth());
    organ.add ("Eight", bareCard ("8", 2.0));
    organ.add ("Four", bareCard ("4", 2.0));
    const RailStudy study (organ.instrument, organ.cards);
    const auto sum =
        addRegistration (registrationTones (study, std::array<std::size_t, 2> { 0, 1 }, std::array { 48, 60 }));
    EXPECT_EQ (sum.tones.size(), 4U);
    EXPECT_NEAR (sum.gainDb(), 1.761, 0.003); // partials above 20 kHz are left out
    EXPECT_NEAR (sum.sum.rmsVolts, 2.449, 0.01);
    EXPECT_NEAR (sum.powerVolts, 2.000, 0.01);
}

TEST (RegistrationSum, TheOrderOfTheStopsDoesNotMatter)
{
    const auto organ = larkfield();
    const RailStudy study (organ.instrument, organ.cards);
    const std::size_t a = study.findStop ("Krummhorn 8");
    const std::size_t b = study.findStop ("Oboe 8");
    const std::size_t c = study.findStop ("String 8");
    const auto one = addRegistration (registrationTones (study, std::array { a, b, c }, std::array { 50 }));
    const auto other = addRegistration (registrationTones (study, std::array { c, a, b }, std::array { 50 }));
    EXPECT_NEAR (one.sum.rmsVolts, other.sum.rmsVolts, 1e-12 * one.sum.rmsVolts);
    EXPECT_EQ (one.partials.size(), other.partials.size());
}

TEST (PolarityCheck, AdvisesToTurnOneOfTwoThatCancel)
{
    auto organ = emptyOrgan (virtualEarth());
    organ.add ("One", bareCard());
    organ.add ("Other", bareCard(), "Upper", "Bus", 94e3).polarity = -1;
    const std::array keys { 48, 60, 72 };
    {
        const RailStudy study (organ.instrument, organ.cards);
        const auto check = checkPolarity (study, 0, 1, keys);
        ASSERT_EQ (check.keys.size(), 3U);
        EXPECT_EQ (check.cancelledKeys, 3U);
        EXPECT_EQ (check.cancelledKeysTurned, 0U);
        EXPECT_TRUE (check.isTurnAdvised());
        EXPECT_NEAR (check.meanSumDb, -6.021, 0.0005);   // 1 - 1/2
        EXPECT_NEAR (check.meanTurnedDb, 3.522, 0.0005); // 1 + 1/2
        for (const auto& key : check.keys)
        {
            EXPECT_EQ (key.cancelledHarmonics.size(), key.sharedCount);
            EXPECT_GT (key.sharedCount, 2U);
        }
    }
    organ.tablet ("Other").polarity = 1;
    const RailStudy study (organ.instrument, organ.cards);
    const auto check = checkPolarity (study, 0, 1, keys);
    EXPECT_EQ (check.cancelledKeys, 0U);
    EXPECT_FALSE (check.isTurnAdvised());
    EXPECT_TRUE (check.keys.front().cancelledHarmonics.empty());
}

TEST (PolarityCheck, LeavesOutKeysWhereOneIsSilent)
{
    auto organ = emptyOrgan (virtualEarth());
    organ.instrument.tuning.highestKey = 96;
    organ.add ("Eight", bareCard());
    organ.add ("Four", bareCard ("4"));
    const RailStudy study (organ.instrument, organ.cards);
    const auto check = checkPolarity (study, 0, 1, std::array { 84, 85 });
    ASSERT_EQ (check.keys.size(), 1U);
    EXPECT_EQ (check.keys.front().key, 84);
    EXPECT_EQ (check.keys.front().sharedCount, 0U) << "octaves of a square have no partial in common";
}

} // namespace stopwright::test

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/LackReason.h"

#include "Organ/Instrument.h"
#include "Study/SampleCards.h"
#include "Study/SourceSpectrum.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{

namespace
{

constexpr int c4 = 60;
constexpr int c7 = 96;

/// dB, of levels that are given to two decimals.
constexpr double twoDecimals = 0.0051;

Tap pulseTap (double duty)
{
    auto tap = sampleTap ("W", WaveKind::square);
    tap.wave.duty = duty;
    return tap;
}

Tap staircaseTap (int ranks)
{
    auto tap = sampleTap ("W", WaveKind::staircase);
    tap.wave.ranks = ranks;
    return tap;
}

LackReason reasonOf (const Tap& tap, double harmonic, int key = c4)
{
    return lackReason (tap, 0, keysUpToC9().tuning, key, harmonic);
}

void expectReason (const Tap& tap, double harmonic, LackCause cause, double number, int key = c4)
{
    const auto reason = reasonOf (tap, harmonic, key);
    EXPECT_EQ (reason.cause, cause) << harmonic << ": " << causeWord (reason.cause);
    EXPECT_NEAR (reason.number, number, 0.5e-9 * std::abs (number)) << harmonic;
}

double levelOf (const Tap& tap, double harmonic, int key = c4)
{
    return SourceSpectrum ({ tap }, keysUpToC9(), key).levelDb (harmonic);
}

KeySource breakingBack()
{
    Instrument organ;
    organ.divisions = { { "Manual", 36, 96, {} } };
    organ.tuning.top = TopBehaviour::breakBack;
    return keySourceOf (organ, "Manual", Card());
}

} // namespace

TEST (LackReason, ASquareHasNoEvenHarmonics)
{
    for (int n = 2; n <= 40; n += 2)
    {
        EXPECT_TRUE (std::isinf (levelOf (pulseTap (0.5), n))) << n; // half-wave symmetry: any table of Fourier series
        expectReason (pulseTap (0.5), n, LackCause::halfWave, 0.0);
        expectReason (sampleTap ("W", WaveKind::triangle), n, LackCause::halfWave, 0.0);
        expectReason (sampleTap ("W", WaveKind::rounded), n, LackCause::halfWave, 0.0);
    }
    for (int n = 3; n <= 41; n += 2)
        expectReason (pulseTap (0.5), n, LackCause::fallsOff, 0.0);
}

TEST (LackReason, AStaircaseLacksMultiplesOfTwoToItsRanks)
{
    for (const int ranks : { 1, 2, 3, 4 })
    {
        const int step = 1 << ranks;
        for (int n = 1; n <= 64; ++n)
        {
            EXPECT_EQ (std::isinf (levelOf (staircaseTap (ranks), n, 36)), n % step == 0) << ranks << " h" << n;
            if (n % step == 0)
                expectReason (staircaseTap (ranks), n, LackCause::missingRank, step, 36);
        }
    }
}

TEST (LackReason, APulseHasNulls)
{
    for (int n = 4; n <= 12; n += 4) // duty 1/4: 4, 8, 12
    {
        EXPECT_TRUE (std::isinf (levelOf (pulseTap (0.25), n))) << n;
        expectReason (pulseTap (0.25), n, LackCause::pulseNull, 4.0);
    }
    EXPECT_NEAR (levelOf (pulseTap (0.25), 2), -3.01, twoDecimals); // (2 / (pi n)) sin (pi n d), re h1
    EXPECT_TRUE (std::isinf (levelOf (pulseTap (0.3), 10)));
    expectReason (pulseTap (0.3), 10, LackCause::pulseNull, 10.0);
    EXPECT_NEAR (levelOf (pulseTap (0.3), 3), -17.90, twoDecimals);
    expectReason (pulseTap (0.3), 3, LackCause::nearPulseNull, 1.0 / 0.3);
    EXPECT_TRUE (std::isinf (levelOf (pulseTap (1.0 / 3.0), 3)));
    expectReason (pulseTap (1.0 / 3.0), 3, LackCause::pulseNull, 3.0);
}

TEST (LackReason, ANearSquareHasEvenOnesByItsDuty)
{
    // 20 log |cos (pi d)|, closed form.
    for (const auto& [duty, db] :
         { std::pair { 0.49, -30.06 }, { 0.48, -24.04 }, { 0.45, -16.11 }, { 119.0 / 239.0, -43.65 } })
    {
        EXPECT_NEAR (levelOf (pulseTap (duty), 2), db, twoDecimals);
        expectReason (pulseTap (duty), 2, LackCause::dutyError, duty);
    }
}

TEST (LackReason, OutphasingLeavesWhatItsWeightIsOff)
{
    // 20 log |1 - 2 w| re the sawtooth's level of the same harmonic, closed form.
    for (const auto& [weight, db] :
         { std::pair { 0.475, -26.02 }, { 0.525, -26.02 }, { 0.45, -20.0 }, { 0.55, -20.0 } })
    {
        auto tap = sampleTap ("W", WaveKind::outphased);
        tap.wave.outphaseWeight = weight;
        for (int n = 2; n <= 12; n += 2)
        {
            EXPECT_NEAR (levelOf (tap, n) - toDecibels (1.0 / n), db, twoDecimals) << weight;
            expectReason (tap, n, LackCause::outphased, weight);
        }
        EXPECT_NEAR (levelOf (tap, 3), toDecibels (1.0 / 3.0), twoDecimals);
    }
    EXPECT_TRUE (std::isinf (levelOf (sampleTap ("W", WaveKind::outphased), 2))) << "one half cancels them";
}

TEST (LackReason, RanksEndWhereTheGeneratorsDo)
{
    // C7 at 8 ft is 2093 Hz; its rank of eight times that would be 16.7 kHz, and C9 (8372 Hz) is the last.
    EXPECT_TRUE (std::isinf (levelOf (staircaseTap (4), 8, c7)));
    EXPECT_FALSE (std::isinf (levelOf (staircaseTap (4), 4, c7)));
    const auto reason = reasonOf (staircaseTap (4), 8, c7);
    EXPECT_EQ (reason.cause, LackCause::rankWithoutGenerator);
    EXPECT_NEAR (reason.number, 16744.04, 0.01);

    const auto broken = lackReason (staircaseTap (4), 0, breakingBack().tuning, c7, 8);
    EXPECT_EQ (broken.cause, LackCause::rankBrokenBack);

    auto tap = staircaseTap (3);
    tap.wave.weights = { 1.0, 0.0, 0.25 };
    expectReason (tap, 6, LackCause::rankOfNoWeight, 2.0);
}

TEST (LackReason, TapsEndWhereTheGeneratorsDo)
{
    const auto oneFoot = sampleTap ("W", WaveKind::square, "1"); // of C7: C10, an octave above the last
    const auto reason = reasonOf (oneFoot, 8, c7);
    EXPECT_EQ (reason.cause, LackCause::noGenerator);
    EXPECT_NEAR (reason.number, 16744.04, 0.01);

    const auto broken = lackReason (oneFoot, 3, breakingBack().tuning, c7, 8);
    EXPECT_EQ (broken, (LackReason { 3, LackCause::brokenBack, 4.0 })) << "sounds C9, whose second is missing";
}

TEST (LackReason, FootagesHaveMultiplesOfTheirOwnPitch)
{
    expectReason (sampleTap ("W", WaveKind::sawtooth, "4"), 3, LackCause::noMultiple, 2.0);
    // A twelfth borrowed from the tempered scale: 2^(19/12).
    expectReason (sampleTap ("W", WaveKind::sawtooth, "2 2/3"), 3, LackCause::besideHarmonic, std::exp2 (19.0 / 12.0));
    expectReason (sampleTap ("W", WaveKind::sawtooth, "2 2/3"), 4, LackCause::noMultiple, std::exp2 (19.0 / 12.0));
}

} // namespace stopwright

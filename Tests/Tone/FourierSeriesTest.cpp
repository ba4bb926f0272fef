// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/FourierSeries.h"

#include "Support/Tolerances.h"
#include "Tone/WaveCorners.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

constexpr double pi = std::numbers::pi;

double level (const Wave& wave, int n)
{
    return std::abs (fourierCoefficient (wave, n, 100.0));
}

double decibels (const Wave& wave, int n, int reference = 1)
{
    return 20.0 * std::log10 (level (wave, n) / level (wave, reference));
}

void expectDecibels (const Wave& wave, const std::vector<double>& expectedFromSecond)
{
    for (std::size_t i = 0; i < expectedFromSecond.size(); ++i)
        EXPECT_NEAR (decibels (wave, static_cast<int> (i) + 2), expectedFromSecond[i], 0.006) << "harmonic " << i + 2;
}

/// Harmonic n of a wave given as a function of phase, by the rectangle rule over one period cut at its jumps: an
/// independent way, with nothing of the closed forms in it.
template <typename Function>
Complex integrated (const Function& value, int n, const std::vector<double>& cuts)
{
    Complex sum;
    for (std::size_t piece = 0; piece + 1 < cuts.size(); ++piece)
    {
        constexpr int steps = 20000;
        const double width = (cuts[piece + 1] - cuts[piece]) / steps;
        for (int i = 0; i < steps; ++i)
        {
            const double t = cuts[piece] + (i + 0.5) * width;
            sum += width * value (t) * std::polar (1.0, -2.0 * pi * n * t);
        }
    }
    return Complex (0.0, 2.0) * sum;
}

double lineValue (const Wave& wave, double phase)
{
    const WaveCorners lines = WaveCorners::of (wave);
    std::size_t at = 0;
    for (std::size_t c = 0; c < static_cast<std::size_t> (lines.count); ++c)
        if (lines.corners[c].phase <= phase)
            at = c;
    return lines.corners[at].value + lines.corners[at].slope * (phase - lines.corners[at].phase);
}

} // namespace

// +-1 V square: 4 / (pi n). Source: any table of Fourier series; numbers are its first terms.
TEST (FourierSeries, SquareHasOddHarmonicsOneOverN)
{
    const std::vector<double> plusMinusOne { 1.2732395447351628,  0.0, 0.4244131815783876, 0.0,
                                             0.25464790894703254, 0.0, 0.18189136353359467 };
    for (std::size_t i = 0; i < plusMinusOne.size(); ++i)
        EXPECT_NEAR (2.0 * level (Wave {}, static_cast<int> (i) + 1), plusMinusOne[i], 1e-15);

    EXPECT_NEAR (std::arg (fourierCoefficient (Wave {}, 3, 1.0)), 0.0, 1e-12) << "rises at time 0";
}

TEST (FourierSeries, TriangleAndSawtoothFollowTheirLaws)
{
    const Wave triangle { .kind = WaveKind::triangle };
    const Wave sawtooth { .kind = WaveKind::sawtooth };
    EXPECT_NEAR (2.0 * level (triangle, 1), 8.0 / (pi * pi), 1e-15);
    EXPECT_NEAR (decibels (triangle, 3), -19.08, 0.006);
    EXPECT_NEAR (decibels (triangle, 5), -27.96, 0.006);
    EXPECT_EQ (level (triangle, 2), 0.0);
    expectDecibels (sawtooth, { -6.02, -9.54, -12.04, -13.98, -15.56, -16.90, -18.06 });
}

// Nulls where n d is whole. Source: 2 |sin (pi n d)| / (pi n), any table of Fourier series.
TEST (FourierSeries, PulsesVanishAtMultiplesOfOneOverDuty)
{
    const Wave quarter { .kind = WaveKind::pulse, .duty = 0.25 };
    const Wave eighth { .kind = WaveKind::pulse, .duty = 0.125 };
    const Wave thirty { .kind = WaveKind::pulse, .duty = 0.3 };
    for (int n = 4; n <= 400; n += 4)
        EXPECT_NEAR (level (quarter, n), 0.0, 1e-16) << n;

    for (int n = 8; n <= 800; n += 8)
        EXPECT_NEAR (level (eighth, n), 0.0, 1e-16) << n;

    EXPECT_NEAR (level (quarter, 1), 0.45015815807855303, 1e-15);
    EXPECT_NEAR (level (eighth, 7), 0.034803405657301174, 1e-15);
    EXPECT_NEAR (decibels (eighth, 6), -10.23, 0.006);
    expectDecibels (thirty, { -4.62, -17.90, -14.82, -12.14, -18.34, -25.26, -16.66, -19.08 });
    EXPECT_NEAR (level (thirty, 10), 0.0, 1e-15);
}

// Second over first of a near-square: |cos (pi d)|. Source: ratio of the two terms above.
TEST (FourierSeries, OddDivisionLeaksASecondHarmonic)
{
    EXPECT_NEAR (decibels (Wave { .duty = 0.49 }, 2), -30.06, 0.006);
    EXPECT_NEAR (decibels (Wave { .duty = 119.0 / 239.0 }, 2), -43.65, 0.006);
}

// Squares 1 : 1/2 : 1/4 : 1/8 give 4 / (pi n), except multiples of 16. Source: each harmonic n = 2^v m, m odd, comes from
// the rank v and no other.
TEST (FourierSeries, StaircaseIsASawtoothWithoutItsSixteenth)
{
    const Wave staircase { .kind = WaveKind::staircase, .ranks = 4 };
    for (int n = 1; n <= 64; ++n)
        EXPECT_NEAR (2.0 * level (staircase, n), n % 16 == 0 ? 0.0 : 4.0 / (pi * n), 1e-15) << n;

    const Wave two { .kind = WaveKind::staircase, .ranks = 2 };
    EXPECT_EQ (level (two, 4), 0.0);
    EXPECT_NEAR (level (two, 6), level (staircase, 6), 1e-16);
}

TEST (FourierSeries, EqualWeightsGiveStrongOctaves)
{
    const Wave wave { .kind = WaveKind::staircase, .ranks = 4, .weights = { 1.0, 1.0, 1.0, 1.0 } };
    expectDecibels (
        wave, { 0.0, -9.54, 0.0, -13.98, -9.54, -16.90, 0.0, -19.08, -13.98, -20.83, -9.54, -22.28, -16.90, -23.52 });
    EXPECT_EQ (level (wave, 16), 0.0);
}

TEST (FourierSeries, AWrongRankTouchesOnlyItsOwnFamily)
{
    const Wave right { .kind = WaveKind::staircase, .ranks = 4 };
    const Wave wrong { .kind = WaveKind::staircase, .ranks = 4, .weights = { 1.0, -0.55, 0.25, 0.125 } };
    for (int n = 1; n <= 32; ++n)
    {
        const double expected = n % 4 == 2 ? 1.1 : 1.0;
        EXPECT_NEAR (level (wrong, n), expected * level (right, n), 1e-15) << n;
    }
}

// Residual evens of an imperfect null: |1 - 2 w| of the sawtooth's. Source: saw (f) - w saw (2f), term by term.
TEST (FourierSeries, OutphasingLeavesTheErrorOfItsWeight)
{
    const Wave sawtooth { .kind = WaveKind::sawtooth };
    const auto evens = [&sawtooth] (double weight, int n)
    {
        const double scale = std::fmax (weight, 1.0 - weight);
        const Wave wave { .kind = WaveKind::outphased, .outphaseWeight = weight };
        return 20.0 * std::log10 (scale * level (wave, n) / level (sawtooth, n));
    };

    for (const int n : { 2, 4, 6, 10 })
    {
        EXPECT_NEAR (evens (0.475, n), -26.02, 0.006);
        EXPECT_NEAR (evens (0.525, n), -26.02, 0.006);
        EXPECT_NEAR (evens (0.45, n), -20.00, 0.006);
        EXPECT_EQ (level (Wave { .kind = WaveKind::outphased }, n), 0.0);
        EXPECT_NEAR (evens (0.5, n + 1), 0.0, 1e-12) << "odd ones stay";
    }
}

// Source: Fourier integral of exponential pieces in the steady state, evaluated elsewhere to two decimals.
TEST (FourierSeries, RoundedWavesMatchTheirPublishedLevels)
{
    const Wave equal { .kind = WaveKind::rounded };
    EXPECT_NEAR (decibels (equal, 3), -14.68, 0.006);
    EXPECT_NEAR (decibels (equal, 5), -22.90, 0.006);
    EXPECT_NEAR (level (equal, 2), 0.0, 1e-15);

    expectDecibels (Wave { .kind = WaveKind::rounded, .riseTau = 0.1, .fallTau = 0.3 },
                    { -17.44, -15.85, -27.77, -24.21, -34.42, -29.89, -39.28 });
    expectDecibels (Wave { .kind = WaveKind::rounded, .riseTau = 0.05, .fallTau = 0.5 },
                    { -11.63, -13.47, -20.24, -20.72, -26.21, -25.95, -30.77 });
}

// With equal time constants it is the square through one RC: 1 / (1 + j w RC). Source: first-order low-pass.
TEST (FourierSeries, EqualTimeConstantsAreASquareThroughOneRc)
{
    for (const double tau : { 1e-4, 0.02, 0.1, 3.0, 100.0 })
        for (const int n : { 1, 2, 3, 7, 99 })
        {
            const Wave wave { .kind = WaveKind::rounded, .riseTau = tau, .fallTau = tau };
            const Complex expected = fourierCoefficient (Wave {}, n, 1.0) / Complex (1.0, 2.0 * pi * n * tau);
            EXPECT_LT (std::abs (fourierCoefficient (wave, n, 1.0) - expected), 1e-14) << tau << ' ' << n;
        }
}

// 47 k and 100 n on an 8 ft square: fundamental gain along the keys. Source: 1 / sqrt (1 + (w RC)^2).
TEST (FourierSeries, SecondsRoundMoreTheHigherTheNote)
{
    const Wave wave { .kind = WaveKind::rounded, .riseTau = 4.7e-3, .fallTau = 4.7e-3, .tauUnit = TauUnit::seconds };
    const std::vector<double> gainDb { -6.749, -12.020, -17.831, -23.798, -29.805, -35.822 };
    for (std::size_t octave = 0; octave < gainDb.size(); ++octave)
    {
        const double hz = 65.40639132514966 * std::exp2 (static_cast<double> (octave));
        const double gain = std::abs (fourierCoefficient (wave, 1, hz)) / level (Wave {}, 1);
        EXPECT_NEAR (20.0 * std::log10 (gain), gainDb[octave], 0.001);
    }
}

TEST (FourierSeries, AgreesWithNumericIntegrationOfTheDrawnLines)
{
    for (const Wave& wave :
         { Wave { .duty = 0.37 }, Wave { .kind = WaveKind::triangle }, Wave { .kind = WaveKind::sawtooth },
           Wave { .kind = WaveKind::outphased, .outphaseWeight = 0.3 },
           Wave { .kind = WaveKind::outphased, .outphaseWeight = 0.8 } })
    {
        const WaveCorners lines = WaveCorners::of (wave);
        const std::vector<double> cuts { 0.0, lines.count == 2 ? lines.corners[1].phase : 0.5, 1.0 };
        for (int n = 1; n <= 12; ++n)
        {
            const Complex drawn = integrated ([&wave] (double t) { return lineValue (wave, t); }, n, cuts);
            EXPECT_LT (std::abs (drawn - fourierCoefficient (wave, n, 1.0)), 1e-6) << waveName (wave.kind) << ' ' << n;
        }
    }
}

TEST (FourierSeries, RoundedAgreesWithASimulatedCapacitor)
{
    // Fifty periods of dv/dt = (u - v) / tau by exact steps from rest: long past the transient.
    constexpr int steps = 20000;
    const double rise = 0.07;
    const double fall = 0.4;
    std::vector<double> volts (steps);
    double v = 0.0;
    for (int period = 0; period < 50; ++period)
        for (int i = 0; i < steps; ++i)
        {
            const bool high = i < steps / 2;
            volts[static_cast<std::size_t> (i)] = v;
            v += ((high ? 0.5 : -0.5) - v) * -std::expm1 (-1.0 / (steps * (high ? rise : fall)));
        }

    const Wave wave { .kind = WaveKind::rounded, .riseTau = rise, .fallTau = fall };
    for (int n = 1; n <= 10; ++n)
    {
        Complex sum;
        for (int i = 0; i < steps; ++i)
            sum += volts[static_cast<std::size_t> (i)] * std::polar (1.0 / steps, -2.0 * pi * n * i / steps);

        EXPECT_LT (std::abs (Complex (0.0, 2.0) * sum - fourierCoefficient (wave, n, 1.0)), 1e-6) << n;
    }
}

TEST (FourierSeries, RanksThatDoNotExistAreSilentOrBreakBack)
{
    const Wave staircase { .kind = WaveKind::staircase, .ranks = 4 };
    const Footage unison;
    const auto at = [&] (const Tuning& tuning, int key, int n)
    { return 2.0 * std::abs (fourierCoefficient (staircase, n, *tuning.generatorFor (key, unison), tuning)); };

    // C7, generators up to C9: ranks C7 C8 C9, the fourth is missing.
    const Tuning silent = Tuning::equalTempered (440.0, 8400.0);
    EXPECT_NEAR (at (silent, 96, 1), 4.0 / pi, 1e-15);
    EXPECT_NEAR (at (silent, 96, 4), 1.0 / pi, 1e-15);
    EXPECT_EQ (at (silent, 96, 8), 0.0);
    EXPECT_NEAR (at (silent, 84, 8), 0.5 / pi, 1e-15) << "one octave lower it is there";

    // Broken back the fourth sounds C9 again: 1/4 + 1/8 on the third.
    const Tuning back = Tuning::equalTempered (440.0, 8400.0, MutationSource::exact, {}, TopBehaviour::breakBack);
    EXPECT_NEAR (at (back, 96, 4), 1.5 / pi, 1e-15);
    EXPECT_EQ (at (back, 96, 8), 0.0);
}

} // namespace stopwright

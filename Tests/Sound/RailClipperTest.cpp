// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/RailClipper.h"

#include "Sound/TestTones.h"
#include "Support/Spectrum.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <iostream>
#include <limits>
#include <numbers>
#include <vector>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = 192000.0;
constexpr std::size_t period = 32768;
constexpr double tenDecibels = 3.1622776601683795;

/// One period of what a sine comes to between rails, settled.
std::vector<double> clipped (RailClipper& clipper, long long cycles, double amplitude)
{
    auto samples = sine (2 * period, cycles, period, amplitude);
    clipper.process (samples);
    return { samples.begin() + period, samples.end() };
}

double clippedAliasDb (double rate, double frequencyHz)
{
    const auto cycles = static_cast<long long> (frequencyHz / rate * period) | 1;
    RailClipper clipper ({ -6.0, 6.0 }, rate);
    const auto samples = clipped (clipper, cycles, 6.0 * tenDecibels);
    const double aliasDb = worstAliasDb (samples, static_cast<std::size_t> (cycles), rate);
    std::cout << frequencyHz << " Hz at " << rate << ": worst alias " << aliasDb << " dB\n";
    return aliasDb;
}

double plainAliasDb (double frequencyHz)
{
    const auto cycles = static_cast<long long> (frequencyHz / rateHz * period) | 1;
    auto samples = sine (period, cycles, period, 6.0 * tenDecibels);
    for (double& sample : samples)
        sample = std::clamp (sample, -6.0, 6.0);
    return worstAliasDb (samples, static_cast<std::size_t> (cycles), rateHz);
}

// The bar is -120 dB at 1 kHz; measured -157 and -135, and -155 and -131 at 176.4 kHz.
TEST (RailClipper, FoldsNothingIntoHearing)
{
    EXPECT_LT (clippedAliasDb (rateHz, 1000.0), -150.0);
    EXPECT_LT (clippedAliasDb (rateHz, 4000.0), -130.0);
    EXPECT_LT (clippedAliasDb (176400.0, 1000.0), -150.0);
    EXPECT_LT (clippedAliasDb (176400.0, 4000.0), -128.0);
    EXPECT_LT (clippedAliasDb (705600.0, 4000.0), -150.0);
}

// The twin: cut at the samples, the same sine folds at -81 and -56 dB.
TEST (RailClipper, IsNeededForThat)
{
    EXPECT_GT (plainAliasDb (1000.0), -82.0);
    EXPECT_GT (plainAliasDb (4000.0), -57.0);
}

// Two stages that both clip: the second may not bring back what the first left above hearing. Measured -150, -123.
TEST (RailClipper, FoldsNothingIntoHearingTwiceOver)
{
    for (const auto& [frequencyHz, barDb] : { std::pair { 1000.0, -140.0 }, std::pair { 4000.0, -118.0 } })
    {
        const auto cycles = static_cast<long long> (frequencyHz / rateHz * period) | 1;
        RailClipper first ({ -6.0, 6.0 }, rateHz);
        RailClipper second ({ -6.0, 6.0 }, rateHz);
        auto samples = sine (2 * period, cycles, period, 6.0 * tenDecibels);
        first.process (samples);
        for (double& sample : samples)
            sample *= 2.0;
        second.process (samples);
        const double aliasDb =
            worstAliasDb (std::span (samples).subspan (period), static_cast<std::size_t> (cycles), rateHz);
        std::cout << frequencyHz << " Hz twice over: worst alias " << aliasDb << " dB\n";
        EXPECT_LT (aliasDb, barDb);
    }
}

// Levels re the fundamental of a sine cut at +0.7 and -1.0, and at +-0.7, from the worked table of the trade (computed
// there by integration); the same by the closed form of a cut sine, which the next test has.
TEST (RailClipper, MakesTheHarmonicsOfACutSine)
{
    RailClipper uneven ({ -1.0, 0.7 }, rateHz);
    const auto levels = amplitudes (clipped (uneven, 171, 1.0));
    EXPECT_NEAR (toDecibels (levels[342] / levels[171]), -21.38, 0.01);
    EXPECT_NEAR (toDecibels (levels[513] / levels[171]), -24.48, 0.01);

    RailClipper even ({ -0.7, 0.7 }, rateHz);
    const auto odd = amplitudes (clipped (even, 171, 1.0));
    EXPECT_LT (toDecibels (odd[342] / odd[171]), -140.0);
    EXPECT_NEAR (toDecibels (odd[513] / odd[171]), -17.50, 0.01);
}

/// Peak amplitude of the sine part of harmonic n of max (-r, min (r, sin)), closed form: with t = asin r,
/// (4 / pi) (integral over 0 .. t of sin x sin nx + r integral over t .. pi / 2 of sin nx), n odd.
double harmonicOfCutSine (double rail, int n)
{
    const double corner = std::asin (rail);
    const double below =
        n == 1 ? 0.5 * corner - 0.25 * std::sin (2.0 * corner)
               : std::sin ((n - 1) * corner) / (2.0 * (n - 1)) - std::sin ((n + 1) * corner) / (2.0 * (n + 1));
    return 4.0 / std::numbers::pi * (below + rail * std::cos (n * corner) / n);
}

// Straight lines between points lie below the sine by w^2 / 12 of it on the mean, w = 2 pi 1002 / 1536000: 4.4e-6 of the
// rail at this drive.
TEST (RailClipper, AgreesWithTheClosedFormOfACutSine)
{
    RailClipper clipper ({ -1.0, 1.0 }, rateHz);
    const auto levels = amplitudes (clipped (clipper, 171, tenDecibels));
    for (const int n : { 1, 3, 5, 7, 9, 11, 13, 15, 17, 19 })
        EXPECT_NEAR (levels[static_cast<std::size_t> (171 * n)],
                     tenDecibels * std::abs (harmonicOfCutSine (1.0 / tenDecibels, n)), 1e-5)
            << n;
}

TEST (RailClipper, IsFlatToTwentyKilohertzAndLateByWholeSamples)
{
    for (const double rate : { 176400.0, 192000.0, 705600.0 })
        for (const double frequencyHz : { 20.0, 1000.0, 10000.0, 15000.0, 20000.0 })
        {
            const auto cycles = static_cast<long long> (std::round (frequencyHz / rate * period));
            RailClipper clipper ({ -6.0, 6.0 }, rate);
            auto samples = sine (2 * period, cycles, period);
            const auto in = bin (std::span (samples).first (period), cycles);
            clipper.process (samples);
            const auto out = bin (std::span (samples).subspan (period), cycles);
            const double late = 2.0 * std::numbers::pi * static_cast<double> (cycles * clipper.delaySamples()) / period;
            const auto ratio = out / in * std::polar (1.0, late);
            EXPECT_NEAR (toDecibels (std::abs (ratio)), 0.0, 1e-4) << frequencyHz << " at " << rate;
            EXPECT_NEAR (std::arg (ratio), 0.0, 1e-9) << frequencyHz << " at " << rate;
        }
}

TEST (RailClipper, HoldsASteadyVoltageAtTheRail)
{
    RailClipper clipper ({ -2.0, 6.0 }, rateHz);
    for (const auto& [in, out] : std::vector<std::pair<double, double>> { { 5.999, 5.999 },
                                                                          { 6.0, 6.0 },
                                                                          { 7.0, 6.0 },
                                                                          { 1e6, 6.0 },
                                                                          { -3.0, -2.0 },
                                                                          { 1e300, 6.0 },
                                                                          { -1e300, -2.0 } })
    {
        clipper.reset();
        std::vector<double> samples (300, in);
        clipper.process (samples);
        EXPECT_NEAR (samples.back(), out, 1e-8) << in;
    }
}

TEST (RailClipper, MayLackARail)
{
    RailClipper clipper ({ -2.0, std::numeric_limits<double>::infinity() }, rateHz);
    auto samples = sine (period, 171, period, 50.0);
    clipper.process (samples);
    EXPECT_NEAR (*std::max_element (samples.begin(), samples.end()), 50.0, 0.1);
    EXPECT_NEAR (*std::min_element (samples.begin(), samples.end()), -2.0, 0.1);
}

TEST (RailClipper, LightsItsLampBeyondEitherRail)
{
    for (const auto& [peak, isLit] : std::vector<std::pair<double, bool>> {
             { 1.99, false }, { -1.99, false }, { 5.9, false }, { 6.1, true }, { -2.1, true } })
    {
        RailClipper clipper ({ -2.0, 6.0 }, rateHz);
        std::vector<double> samples (100, peak);
        clipper.process (samples);
        EXPECT_EQ (clipper.hasClipped(), isLit) << peak;

        std::vector<double> silence (100, 0.0);
        clipper.process (silence);
        EXPECT_EQ (clipper.hasClipped(), isLit) << peak; // latched
        clipper.clearLamp();
        clipper.process (silence);
        EXPECT_FALSE (clipper.hasClipped());
    }
}

// What overshoots behind one clipper is no fault of the next one.
TEST (RailClipper, LightsNoLampForTheRingingOfAnother)
{
    for (const double frequencyHz : { 100.0, 1000.0, 4000.0 })
        for (const bool isSquare : { false, true })
        {
            auto samples = sine (period, static_cast<long long> (frequencyHz / rateHz * period), period, 20.0);
            for (double& sample : samples)
                sample = isSquare ? std::copysign (20.0, sample) : sample;
            RailClipper first ({ -6.0, 6.0 }, rateHz);
            RailClipper second ({ -6.0, 6.0 }, rateHz);
            first.process (samples);
            EXPECT_GT (*std::max_element (samples.begin(), samples.end()), 6.001);
            second.process (samples);
            EXPECT_TRUE (first.hasClipped());
            EXPECT_FALSE (second.hasClipped()) << frequencyHz << (isSquare ? " square" : " sine");
        }
}

TEST (RailClipper, DoesNotCareHowTheStreamIsCut)
{
    Random random (31);
    for (const double peak : { 1.0, 3.5, 30.0 })
    {
        auto in = noise (20000, peak, random);
        std::fill (in.begin() + 5000, in.begin() + 9000, 0.1); // asleep and woken again
        RailClipper whole ({ -3.0, 4.0 }, rateHz);
        RailClipper pieces ({ -3.0, 4.0 }, rateHz);
        EXPECT_EQ (throughWhole (whole, in), throughPieces (pieces, in, random)) << peak; // to the last bit
    }
}

TEST (RailClipper, GoesOnFromAnotherAndForgets)
{
    Random random (32);
    const auto in = noise (1000, 10.0, random);
    RailClipper clipper ({ -3.0, 4.0 }, rateHz);
    const auto first = throughWhole (clipper, in);
    RailClipper other ({ -3.0, 4.0 }, rateHz);
    other.copyStateFrom (clipper);
    EXPECT_TRUE (other.hasClipped());
    const auto next = throughWhole (clipper, in);
    EXPECT_EQ (throughWhole (other, in), next);
    EXPECT_NE (next, first);
    clipper.reset();
    EXPECT_FALSE (clipper.hasClipped());
    EXPECT_EQ (throughWhole (clipper, in), first);
}

TEST (RailClipper, RecoversFromWhatIsNoNumber)
{
    RailClipper clipper ({ -3.0, 4.0 }, rateHz);
    std::vector<double> samples (500, 1.0);
    samples[3] = std::numeric_limits<double>::quiet_NaN();
    samples[4] = std::numeric_limits<double>::infinity();
    clipper.process (samples);
    EXPECT_TRUE (std::isnan (samples[3]));
    EXPECT_NEAR (samples.back(), 1.0, 1e-12);
}

} // namespace
} // namespace stopwright

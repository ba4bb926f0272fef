// SPDX-License-Identifier: GPL-3.0-or-later
//
// Each kind of stage, in a preamp of its own.
#include "Sound/StageVoice.h"

#include "Sound/TestCards.h"
#include "Sound/TestPreamps.h"
#include "Support/Tolerances.h"
#include "Tone/GeneratorBank.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <iostream>
#include <numbers>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = preampRateHz;
constexpr long long period = preampPeriod;

TEST (StageVoice, AmplifiesAndInverts)
{
    PreampChain chain (preampOf ({ amplifier (-0.5) }), rateHz);
    std::vector<double> volts { 1.0, -2.0 };
    chain.process (volts);
    EXPECT_EQ (volts, (std::vector<double> { -0.5, 1.0 }));
    PreampChain halving (preampOf ({ amplifier (0.5) }), rateHz);
    EXPECT_NEAR (decibelsOf (halving, 1000.0), -6.0206, 1e-4); // 20 log10 (1 / 2)
}

// 47 k and 100 n as a coupling high-pass, 33.863 Hz: closed form at 30 Hz and up.
TEST (StageVoice, CouplesByACapacitor)
{
    auto stage = amplifier (1.0);
    stage.coupling = Coupling { 100e-9, 47e3 };
    PreampChain chain (preampOf ({ stage }), rateHz);
    for (const double hz : { 30.0, 70.0, 260.0, 5000.0 })
    {
        const double ratio = 33.8628 / hz;
        EXPECT_NEAR (decibelsOf (chain, hz), -10.0 * std::log10 (1.0 + ratio * ratio), tolerance::runtimeDb) << hz;
        chain.reset();
    }
}

// One pole at gainBandwidthHz over the noise gain: 1 + |gain| of an inverter, the gain of any other, at least 1. Closed form
// at the warped frequency.
TEST (StageVoice, HasTheBandwidthThatTheGainLeaves)
{
    for (const auto& [gain, cornerHz] :
         { std::pair { -100.0, 1e6 / 101.0 }, std::pair { 20.0, 50e3 }, std::pair { 0.1, 1e6 } })
    {
        auto stage = amplifier (gain);
        stage.gainBandwidthHz = 1e6;
        PreampChain chain (preampOf ({ stage }), rateHz);
        const double warpedHz = rateHz / std::numbers::pi * std::tan (std::numbers::pi * 10000.0 / rateHz);
        const auto expected = gain / std::complex<double> (1.0, warpedHz / cornerHz);
        EXPECT_LT (std::abs (responseOf (chain, 1000) / expected - 1.0), tolerance::discretisation) << gain;
    }
}

TEST (StageVoice, ClipsUnevenlyAtUnevenRails)
{
    auto stage = amplifier (10.0);
    stage.rails = SupplyRails { -3.0, 7.0 };
    PreampChain chain (preampOf ({ stage }), rateHz);
    for (const auto& [in, out] : { std::pair { 1.0, 7.0 }, std::pair { -1.0, -3.0 }, std::pair { 0.5, 5.0 } })
    {
        std::vector<double> volts (200, in);
        chain.process (volts);
        EXPECT_NEAR (volts.back(), out, 1e-9);
    }
}

// Never-clip limit of ten squares at +-6 V: 0.6 V each (closed form: peak of the chord is ten times one
// of them). Each bit of `state` is the side one of the squares is on.
TEST (StageVoice, HasTheHeadroomOfAChordOfSquares)
{
    for (const auto& [peakVolts, isLit] : { std::pair { 0.60, false }, std::pair { 0.61, true } })
    {
        auto stage = amplifier (1.0);
        stage.rails = SupplyRails { -6.0, 6.0 };
        PreampChain chain (preampOf ({ stage }), rateHz);
        std::vector<double> volts;
        for (int state = 0; state < 1024; ++state)
        {
            double sum = 0.0;
            for (int note = 0; note < 10; ++note)
                sum += ((state >> note) & 1) != 0 ? peakVolts : -peakVolts;
            volts.insert (volts.end(), 40, sum);
        }
        chain.process (volts);
        EXPECT_EQ (chain.clips (0), isLit) << peakVolts;
    }
}

// The same chord from generators that run: C2 G2 C3 E3 G3 C4 E4 G4 C5 E5, band-limited, so that each edge rings. All ten
// rise at once at time zero.
TEST (StageVoice, LightsNoLampForTheRingingOfBandLimitedEdges)
{
    constexpr int blockSamples = 8192;
    for (const auto& [peakVolts, isLit] : { std::pair { 0.60, false }, std::pair { 0.61, true } })
    {
        auto stage = amplifier (2.0 * peakVolts); // of waves of 1 V from peak to peak
        stage.rails = SupplyRails { -6.0, 6.0 };
        PreampChain chain (preampOf ({ stage }), rateHz);
        const Tuning tuning = Tuning::equalTempered (440.0, 10000.0);
        GeneratorBank bank (tuning, { Wave {} }, rateHz, blockSamples);
        double peak = 0.0;
        for (int block = 0; block < 100; ++block)
        {
            std::vector<double> volts (blockSamples, 0.0);
            bank.advance (blockSamples);
            for (const int key : { 36, 43, 48, 52, 55, 60, 64, 67, 72, 76 })
            {
                const auto wave = bank.wave (0, *tuning.generatorFor (key, Footage::parse ("8")));
                for (std::size_t i = 0; i < volts.size(); ++i)
                    volts[i] += static_cast<double> (wave[i]);
            }
            peak = std::max (peak, 2.0 * peakVolts * peakOf (volts));
            chain.process (volts);
        }
        std::cout << "band-limited chord at " << peakVolts << " V: peak " << peak << " V\n";
        EXPECT_GT (peak, 6.05);
        EXPECT_EQ (chain.clips (0), isLit) << peakVolts;
    }
}

// 0.7 mA, 10 k, 4.7 k: sinks 2.238 V (common practice, the product of current and both resistances in parallel).
TEST (StageVoice, FollowsOnlyAsFarAsItsStandingCurrent)
{
    PreampChain chain (preampOf ({ follower() }), rateHz);
    std::vector<double> down (200, -5.0);
    chain.process (down);
    EXPECT_NEAR (down.back(), -2.238, 0.0005);
    EXPECT_TRUE (chain.clips (0));

    chain.clearClips();
    chain.reset();
    std::vector<double> up (200, 50.0);
    chain.process (up);
    EXPECT_NEAR (up.back(), 50.0, 1e-9);
    EXPECT_FALSE (chain.clips (0));
}

TEST (StageVoice, FollowsToTheNearerOfBothBounds)
{
    auto stage = follower();
    stage.rails = SupplyRails { -1.5, 1.0 };
    PreampChain near (preampOf ({ stage }), rateHz);
    std::vector<double> down (200, -5.0);
    near.process (down);
    EXPECT_NEAR (down.back(), -1.5, 1e-9);

    stage.rails = SupplyRails { -9.0, 9.0 };
    PreampChain far (preampOf ({ stage }), rateHz);
    down.assign (200, -5.0);
    far.process (down);
    EXPECT_NEAR (down.back(), -2.238, 0.0005);
}

TEST (StageVoice, PlaysANetworkAsTheAnalysisSeesIt)
{
    const Card card = toneCard();
    PreampChain chain (preampOf ({ circuit() }), rateHz, listOf (card));
    for (const double hz : { 200.0, 1000.0, 10000.0 })
    {
        // Divider of 4.7 k + 10 k into 100 k // 10 n, closed form at the warped frequency.
        const double warped = 2.0 * rateHz * std::tan (std::numbers::pi * hz / rateHz);
        const std::complex<double> load = 1.0 / std::complex<double> (1.0 / 100e3, warped * 10e-9);
        const auto expected = load / (load + 14.7e3);
        const auto found = responseOf (chain, static_cast<long long> (hz * period / rateHz));
        EXPECT_LT (std::abs (found / expected - 1.0), tolerance::discretisation) << hz;
        chain.reset();
    }
}

} // namespace
} // namespace stopwright

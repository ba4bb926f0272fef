// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/PreampChain.h"

#include "Sound/TestCards.h"
#include "Sound/TestTones.h"
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"
#include "Tone/GeneratorBank.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <iostream>
#include <limits>
#include <numbers>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = 192000.0;
constexpr long long period = 19200;

PreampStage amplifier (double gain)
{
    PreampStage stage;
    stage.name = "Amplifier";
    stage.gain = gain;
    return stage;
}

PreampStage follower()
{
    PreampStage stage;
    stage.name = "Follower";
    stage.kind = StageKind::follower;
    stage.emitterAmps = 0.7e-3;
    stage.emitterOhms = 10e3;
    stage.loadOhms = 4.7e3;
    return stage;
}

PreampStage circuit()
{
    PreampStage stage;
    stage.name = "Tone";
    stage.kind = StageKind::circuit;
    return stage;
}

/// 10 k in series, 10 n and 100 k to common, fed behind 4.7 k.
Card toneCard()
{
    Card card;
    card.name = "Tone network";
    Tap tap;
    tap.name = "In";
    tap.node = "in";
    tap.sourceOhms = 4.7e3;
    card.taps = { tap };
    card.parts = { { .name = "R1", .nodes = { "in", "out" }, .value = Resistor { 10e3 } },
                   { .name = "C1", .nodes = { "out", "0" }, .value = Capacitor { .farads = 10e-9 } },
                   { .name = "R2", .nodes = { "out", "0" }, .value = Resistor { 100e3 } } };
    card.output = "out";
    return card;
}

Preamp preampOf (std::vector<PreampStage> stages)
{
    return { .name = "Main", .bus = "Bus", .outlet = "Outlet", .stages = std::move (stages) };
}

/// All that can be in one, with rails that are passed now and then.
Preamp fullPreamp()
{
    auto first = amplifier (-4.7);
    first.coupling = Coupling { 100e-9, 47e3 };
    first.gainBandwidthHz = 1e6;
    first.rails = SupplyRails { -6.0, 5.0 };
    auto last = follower();
    last.coupling = Coupling { 1e-6, 100e3 };
    last.rails = SupplyRails {};
    return preampOf ({ first, circuit(), last });
}

std::vector<std::reference_wrapper<const Card>> listOf (const Card& card)
{
    return { std::cref (card) };
}

std::complex<double> responseOf (PreampChain& chain, long long cycles)
{
    auto samples = sine (10 * period, cycles, period, 1e-3);
    const auto in = bin (std::span (samples).first (period), cycles);
    chain.process (samples);
    return bin (std::span (samples).last (period), cycles) / in;
}

double decibelsOf (PreampChain& chain, double frequencyHz)
{
    return toDecibels (std::abs (responseOf (chain, static_cast<long long> (frequencyHz * period / rateHz))));
}

TEST (PreampChain, WithoutStagesIsAWire)
{
    PreampChain chain (preampOf ({}), rateHz);
    std::vector<double> volts { 1.0, -2.0, 3e9 };
    chain.process (volts);
    EXPECT_EQ (volts, (std::vector<double> { 1.0, -2.0, 3e9 }));
    EXPECT_EQ (chain.latencySamples(), 0);
    EXPECT_TRUE (chain.stageNames().empty());
}

TEST (PreampChain, AmplifiesAndInverts)
{
    PreampChain chain (preampOf ({ amplifier (-0.5) }), rateHz);
    std::vector<double> volts { 1.0, -2.0 };
    chain.process (volts);
    EXPECT_EQ (volts, (std::vector<double> { -0.5, 1.0 }));
    PreampChain halving (preampOf ({ amplifier (0.5) }), rateHz);
    EXPECT_NEAR (decibelsOf (halving, 1000.0), -6.0206, 1e-4); // 20 log10 (1 / 2)
}

// 47 k and 100 n as a coupling high-pass, 33.863 Hz: at C2 -1.031 dB and at C4 -0.072 dB in the worked table of the trade
// (T6); here by the closed form at 70 and 260 Hz.
TEST (PreampChain, CouplesByACapacitor)
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

// One pole at gainBandwidthHz / |gain|; below a gain of one at gainBandwidthHz. Closed form at the warped frequency.
TEST (PreampChain, HasTheBandwidthThatTheGainLeaves)
{
    for (const auto& [gain, cornerHz] :
         { std::pair { -100.0, 10e3 }, std::pair { 20.0, 50e3 }, std::pair { 0.1, 1e6 } })
    {
        auto stage = amplifier (gain);
        stage.gainBandwidthHz = 1e6;
        PreampChain chain (preampOf ({ stage }), rateHz);
        const double warpedHz = rateHz / std::numbers::pi * std::tan (std::numbers::pi * 10000.0 / rateHz);
        const auto expected = gain / std::complex<double> (1.0, warpedHz / cornerHz);
        EXPECT_LT (std::abs (responseOf (chain, 1000) / expected - 1.0), tolerance::discretisation) << gain;
    }
}

TEST (PreampChain, ClipsUnevenlyAtUnevenRails)
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

// Never-clip limit of ten squares at +-6 V: 0.6 V each (worked table of the trade, T12: peak of the chord is ten times one
// of them). Each bit of `state` is the side one of the squares is on.
TEST (PreampChain, HasTheHeadroomOfAChordOfSquares)
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
TEST (PreampChain, LightsNoLampForTheRingingOfBandLimitedEdges)
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

// 0.7 mA, 10 k, 4.7 k: sinks 2.238 V (worked table of the trade, T12b).
TEST (PreampChain, FollowsOnlyAsFarAsItsStandingCurrent)
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

TEST (PreampChain, FollowsToTheNearerOfBothBounds)
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

TEST (PreampChain, PlaysANetworkAsTheAnalysisSeesIt)
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

TEST (PreampChain, LightsTheLampOfTheStageThatClips)
{
    const Card card = toneCard();
    PreampChain chain (fullPreamp(), rateHz, listOf (card));
    EXPECT_EQ (chain.stageNames(), (std::vector<std::string> { "Amplifier", "Tone", "Follower" }));
    auto volts = sine (19200, 40, 19200, 0.4); // 1.9 V behind the first stage
    chain.process (volts);
    EXPECT_FALSE (chain.clips (0) || chain.clips (1) || chain.clips (2));

    volts = sine (19200, 40, 19200, 0.9); // 4.2 V: enough for the follower only
    chain.process (volts);
    EXPECT_FALSE (chain.clips (0) || chain.clips (1));
    EXPECT_TRUE (chain.clips (2));

    volts = sine (19200, 40, 19200, 2.0);
    chain.process (volts);
    EXPECT_TRUE (chain.clips (0));
    chain.clearClips();
    EXPECT_FALSE (chain.clips (0) || chain.clips (1) || chain.clips (2));
}

TEST (PreampChain, IsLateByWholeSamples)
{
    auto stage = amplifier (1.0);
    stage.rails = SupplyRails {};
    PreampChain chain (preampOf ({ stage, amplifier (2.0), stage }), rateHz);
    const int late = chain.latencySamples();
    EXPECT_EQ (late, 2 * RailClipper ({}, rateHz).delaySamples());
    const double angle = 2.0 * std::numbers::pi * 100.0 / period;
    const auto expected = 2.0 * std::polar (1.0, -angle * late);
    EXPECT_LT (std::abs (responseOf (chain, 100) - expected), 1e-5);
}

TEST (PreampChain, DoesNotCareHowTheStreamIsCut)
{
    Random random (41);
    const Card card = toneCard();
    PreampChain whole (fullPreamp(), rateHz, listOf (card));
    PreampChain pieces (fullPreamp(), rateHz, listOf (card));
    const auto in = noise (20000, 3.0, random);
    EXPECT_EQ (throughWhole (whole, in), throughPieces (pieces, in, random)); // to the last bit
    EXPECT_TRUE (whole.clips (0));
}

TEST (PreampChain, GoesOnFromAnotherOfTheSameMake)
{
    Random random (42);
    const Card card = toneCard();
    const auto in = noise (5000, 3.0, random);
    PreampChain first (fullPreamp(), rateHz, listOf (card));
    throughWhole (first, in);

    auto louder = fullPreamp();
    louder.stages[0].gain = -6.0;
    EXPECT_TRUE (PreampChain (louder, rateHz, listOf (card)).isLike (first));
    auto other = fullPreamp();
    other.stages[0].coupling.reset();
    EXPECT_FALSE (PreampChain (other, rateHz, listOf (card)).isLike (first));
    EXPECT_FALSE (PreampChain (fullPreamp(), 176400.0, listOf (card)).isLike (first));

    PreampChain second (fullPreamp(), rateHz, listOf (card));
    second.copyStateFrom (first);
    const auto next = throughWhole (first, in);
    const auto taken = throughWhole (second, in);
    // The circuit's first sample is a damped one: it differs by what the step makes of a fast edge. That fades with the
    // network, but for a rest on the coupling capacitor behind it, which holds for 0.1 s.
    for (std::size_t i = 0; i < next.size(); ++i)
        ASSERT_NEAR (taken[i], next[i], i < 2000 ? 0.05 : 1e-4) << i;
}

TEST (PreampChain, GoesOnToTheLastBitWithoutACircuit)
{
    Random random (44);
    auto preamp = fullPreamp();
    preamp.stages.erase (preamp.stages.begin() + 1);
    const auto in = noise (5000, 3.0, random);
    PreampChain first (preamp, rateHz);
    throughWhole (first, in);
    PreampChain second (preamp, rateHz);
    second.copyStateFrom (first);
    EXPECT_TRUE (second.clips (0));
    EXPECT_EQ (throughWhole (second, in), throughWhole (first, in));
}

TEST (PreampChain, ForgetsOnReset)
{
    Random random (43);
    const Card card = toneCard();
    auto in = noise (3000, 3.0, random);
    PreampChain chain (fullPreamp(), rateHz, listOf (card));
    const auto first = throughWhole (chain, in);
    EXPECT_NE (throughWhole (chain, in), first);
    chain.reset();
    EXPECT_EQ (throughWhole (chain, in), first);

    std::vector<double> bad { 1.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity() };
    chain.process (bad);
    chain.reset();
    EXPECT_EQ (throughWhole (chain, in), first);
}

/// The sentence a preamp is refused with.
std::string refusalOf (const Preamp& preamp, const std::vector<std::reference_wrapper<const Card>>& cards = {})
{
    try
    {
        const PreampChain chain (preamp, rateHz, cards);
    }
    catch (const Error& error)
    {
        return error.what();
    }
    return {};
}

TEST (PreampChain, RefusesInASentence)
{
    auto stage = amplifier (1.0);
    stage.rails = SupplyRails { 1.0, 6.0 };
    EXPECT_EQ (refusalOf (preampOf ({ stage })),
               "Preamp 'Main', stage 'Amplifier': its rails of 1.00 V and 6.00 V cannot be; give one below 0 V and one "
               "above, re the resting point.");
    stage = amplifier (1.0);
    stage.coupling = Coupling { 0.0, 47e3 };
    EXPECT_EQ (refusalOf (preampOf ({ stage })),
               "Preamp 'Main', stage 'Amplifier': its coupling capacitor of 0 F cannot be; give a positive value.");
    EXPECT_EQ (refusalOf (preampOf ({ circuit() })),
               "Preamp 'Main', stage 'Tone': there is no card with its network; name one that can be read.");
    const Card two = otherCard();
    EXPECT_NE (refusalOf (preampOf ({ circuit() }), listOf (two)).find ("2 taps; give it exactly one"),
               std::string::npos);
    EXPECT_NE (refusalOf (preampOf ({ amplifier (1.0) }), listOf (two)).find ("1 cards were given"), std::string::npos);
    Card broken = toneCard();
    broken.output = "nowhere";
    EXPECT_NE (refusalOf (preampOf ({ circuit() }), listOf (broken)).find ("stage 'Tone'"), std::string::npos);
    EXPECT_THROW (PreampChain (preampOf ({}), 48000.0), Error);
}

} // namespace
} // namespace stopwright

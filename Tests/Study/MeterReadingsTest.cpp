// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/MeterReadings.h"

#include "Organ/TestOrgan.h"
#include "Study/BenchWave.h"
#include "Study/ProbeLoad.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stopwright::test
{

namespace
{

MeterReadings readingsOf (WaveKind kind, double duty = 0.5, const std::string& footage = "8")
{
    auto card = bareCard (footage);
    card.taps.front().wave.kind = kind;
    card.taps.front().wave.duty = duty;
    return meterReadings (benchWave (BenchPoint::ofCard (card, keySourceForCardAlone (card), ""), 57).waves);
}

double loadedDb (double sourceOhms, double loadOhms)
{
    return toDecibels (std::abs (ProbeLoad { loadOhms, 0.0 }.ratio (sourceOhms, 1000.0)));
}

double cornerHz (double ohms, const ProbeLoad& load)
{
    return cornerOf (load, [ohms] (double) { return std::complex<double> (ohms); }).value_or (0.0);
}

} // namespace

// Closed forms of mean magnitude, rms and peak of each wave; rounded edges take some thousandths of a dB.
TEST (MeterReadings, AveragingMeterAndCrest)
{
    const auto square = readingsOf (WaveKind::square);
    EXPECT_NEAR (square.averageErrorDb(), 0.912, 0.001);
    EXPECT_NEAR (square.crestDb(), 0.0, 0.001);
    EXPECT_NEAR (square.peakToPeakVolts(), 1.0, 1e-5);
    for (const WaveKind kind : { WaveKind::triangle, WaveKind::sawtooth })
    {
        EXPECT_NEAR (readingsOf (kind).averageErrorDb(), -0.337, 0.001);
        EXPECT_NEAR (readingsOf (kind).crestDb(), 4.771, 0.004);
    }
    const auto pulse = readingsOf (WaveKind::pulse, 0.125);
    EXPECT_NEAR (pulse.averageErrorDb(), -2.678, 0.002);
    EXPECT_NEAR (pulse.crestDb(), 8.451, 0.004);
    EXPECT_NEAR (pulse.highestVolts, 7.0 / 8.0, 1e-4);
    EXPECT_NEAR (pulse.lowestVolts, -1.0 / 8.0, 1e-4);
}

TEST (MeterReadings, ASine)
{
    std::vector<double> sine;
    for (int index = 0; index < 4096; ++index)
        sine.push_back (std::sin (2.0 * std::numbers::pi * (index + 0.5) / 4096.0));
    const auto readings = meterReadings (std::vector<std::vector<double>> { sine });
    EXPECT_NEAR (readings.averageErrorDb(), 0.0, 1e-5);
    EXPECT_NEAR (readings.crestDb(), 3.010, 0.001);
    // Two that are independent: rms as powers, peaks as they are.
    const auto both = meterReadings (std::vector<std::vector<double>> { sine, sine });
    EXPECT_NEAR (both.rmsVolts, 1.0, 1e-9);
    EXPECT_NEAR (both.peakToPeakVolts(), 4.0, 1e-5);
}

TEST (MeterReadings, ABorrowedMutationIsOfAnotherPitchClass)
{
    auto card = bareCard();
    card.taps.push_back (card.taps.front());
    card.taps.front().sourceOhms = card.taps.back().sourceOhms = 1e3;
    card.taps.back().name = "Quint";
    card.taps.back().footage = Footage::parse ("2 2/3");
    auto source = keySourceForCardAlone (card);
    EXPECT_EQ (benchWave (BenchPoint::ofCard (card, source, ""), 57).waves.size(), 1U);
    source.tuning = Tuning::equalTempered (440.0, 20000.0, MutationSource::borrowed);
    const auto wave = benchWave (BenchPoint::ofCard (card, source, ""), 57);
    ASSERT_EQ (wave.waves.size(), 2U);
    EXPECT_NEAR (meterReadings (wave.waves).rmsVolts, 0.25 * std::numbers::sqrt2, 1e-4);
}

// Voltage dividers and RC poles, closed form.
TEST (ProbeLoad, LevelsAndCorners)
{
    EXPECT_NEAR (loadedDb (47e3, 10e3), -15.117, 0.0006);
    EXPECT_NEAR (loadedDb (47e3, 220e3), -1.682, 0.0006);
    EXPECT_NEAR (loadedDb (47e3, 470e3), -0.828, 0.0006);
    EXPECT_NEAR (loadedDb (47e3, 1e6), -0.399, 0.0006);
    EXPECT_NEAR (loadedDb (47e3, 2.2e6), -0.184, 0.0006);
    EXPECT_NEAR (loadedDb (47e3, 10e6), -0.041, 0.0006);
    EXPECT_NEAR (cornerHz (47e3, { 1e12, 150e-12 }), 22.6e3, 50.0); // a cable
    EXPECT_NEAR (cornerHz (47e3, { 1e6, 100e-12 }), 35.5e3, 50.0);  // a 1x probe
    EXPECT_NEAR (cornerHz (47e3, { 10e6, 15e-12 }), 227e3, 500.0);  // a 10x probe
    EXPECT_EQ (cornerHz (47e3, { 10e6, 0.0 }), 0.0);
}

// A square through 47 k read by a 1x probe: the same card with the probe drawn in.
TEST (ProbeLoad, IsTheProbeDrawnIn)
{
    auto card = bareCard();
    card.taps.front().sourceOhms = 47e3;
    auto drawn = card;
    drawn.parts.push_back ({ "R1", { "a", "0" }, Resistor { 1e6 } });
    drawn.parts.push_back ({ "C1", { "a", "0" }, Capacitor { 100e-12 } });
    const auto source = keySourceForCardAlone (card);
    const auto probed = benchWave (BenchPoint::ofCard (card, source, ""), 84, ProbeLoad { 1e6, 100e-12 }).waves.front();
    const auto wanted = benchWave (BenchPoint::ofCard (drawn, source, ""), 84).waves.front();
    ASSERT_EQ (probed.size(), wanted.size());
    for (std::size_t index = 0; index < probed.size(); ++index)
        EXPECT_NEAR (probed[index], wanted[index], 1e-9);
}

} // namespace stopwright::test

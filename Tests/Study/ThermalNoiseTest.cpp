// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ThermalNoise.h"

#include "Organ/TestOrgan.h"
#include "Study/BleedStudy.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stopwright::test
{

namespace
{

using Complex = std::complex<double>;

/// All of 20 kHz, down to where nothing is left.
NoiseBand wholeBand (double kelvin)
{
    return { 1e-3, 20000.0, kelvin };
}

double noiseOf (double ohms, const NoiseBand& band)
{
    return thermalNoise ([ohms] (double) { return Complex (ohms); }, band);
}

/// Volts of a virtual earth of 47 k with so many sources of 47 k, 20 nV per root hertz, over 20 kHz at 300 K.
BusNoise earthWith (int sources)
{
    MixingBus bus;
    bus.kind = BusKind::virtualEarth;
    bus.feedbackOhms = 47e3;
    auto organ = emptyOrgan (bus);
    for (int source = 0; source < sources; ++source)
        organ.add ("Stop " + std::to_string (source), bareCard());
    const RailStudy rail (organ.instrument, organ.cards);
    return busNoise (rail, 0, rail.asOpened(), wholeBand (300.0), 20e-9);
}

} // namespace

// sqrt (4 k T R B), Nyquist 1928.
TEST (ThermalNoise, OfAResistor)
{
    EXPECT_NEAR (noiseOf (47e3, wholeBand (290.0)), 3.880e-6, 0.0006e-6);
    EXPECT_NEAR (noiseOf (47e3, wholeBand (298.15)), 3.934e-6, 0.0006e-6);
    EXPECT_NEAR (noiseOf (47e3, wholeBand (300.0)), 3.946e-6, 0.0006e-6);
    EXPECT_NEAR (noiseOf (47e3, { 1000.0, 1001.0, 300.0 }), 27.9e-9, 0.05e-9);
}

// A resistor with a capacitor across it has k T / C in all, whatever the resistor: here over 24 decades.
TEST (ThermalNoise, OfAnRcIsKTOverC)
{
    for (const double ohms : { 1e3, 47e3, 1e6 })
    {
        constexpr double farads = 1e-9;
        const auto impedance = [ohms] (double hz)
        { return 1.0 / Complex (1.0 / ohms, 2.0 * std::numbers::pi * hz * farads); };
        const double all = thermalNoise (impedance, { 1e-9, 1e15, 300.0 });
        EXPECT_NEAR (all, std::sqrt (1.380649e-23 * 300.0 / farads), 1e-6 * all) << ohms;
    }
}

// A tuned circuit too: the capacitor's k T / C, Q 50.
TEST (ThermalNoise, OfAResonance)
{
    const auto impedance = [] (double hz)
    {
        const Complex s (0.0, 2.0 * std::numbers::pi * hz);
        return 1.0 / (1.0 / (134.8 + s) + s * 22e-9); // 1 H, 22 nF
    };
    const double all = thermalNoise (impedance, { 1e-3, 1e12, 300.0 });
    EXPECT_NEAR (all, std::sqrt (1.380649e-23 * 300.0 / 22e-9), 2e-6 * all);
}

// en (1 + N), 4 k T Rf and N times 4 k T Ri, as powers, at 300 K.
TEST (BusNoise, OfAVirtualEarth)
{
    EXPECT_NEAR (earthWith (1).volts, 7.95e-6, 0.006e-6);
    EXPECT_NEAR (earthWith (8).volts, 28.07e-6, 0.006e-6);
    EXPECT_NEAR (earthWith (16).volts, 50.76e-6, 0.006e-6);
    EXPECT_NEAR (earthWith (1).noiseGain, 2.0, 1e-9);
    EXPECT_NEAR (earthWith (8).noiseGain, 9.0, 1e-9);
    EXPECT_NEAR (earthWith (16).noiseGain, 17.0, 1e-9);
}

TEST (BusNoise, OfAPassiveBusIsThatOfItsResistors)
{
    auto organ = emptyOrgan (passiveBus());
    organ.add ("Stop", bareCard());
    const RailStudy rail (organ.instrument, organ.cards);
    const auto found = busNoise (rail, 0, rail.asOpened(), wholeBand (300.0), 20e-9);
    const double wanted = noiseOf (47e3 * 100e3 / 147e3, wholeBand (300.0));
    EXPECT_NEAR (found.volts, wanted, 1e-9 * wanted);
    const auto doubled =
        busNoise (rail, 0, rail.asOpened(), wholeBand (300.0), 20e-9, [] (double) { return Complex (-2.0); });
    EXPECT_NEAR (doubled.volts, 2.0 * wanted, 1e-9 * wanted);
}

// w R C of 2 pF into 47 k, closed form; 61 keys C2 to C7 as powers.
TEST (BleedStudy, TwoPicofaradsInto47k)
{
    struct Value
    {
        int key;
        double db;
    };

    auto card = bareCard();
    card.taps.front().sourceOhms = 47e3;
    auto source = keySourceForCardAlone (card);
    // One key alone: the compass holds it and the played one.
    for (const Value& value :
         { Value { 36, -88.26 }, Value { 60, -76.22 }, Value { 84, -64.18 }, Value { 108, -52.14 } })
    {
        source.lowestKey = value.key;
        source.highestKey = value.key + 1;
        EXPECT_NEAR (bleedLevels (BenchPoint::ofCard (card, source, ""), value.key + 1).fundamentalsDb, value.db, 0.01);
    }
    source.lowestKey = 36;
    source.highestKey = 96;
    // The key played is outside of the compass, so that all 61 are idle.
    EXPECT_NEAR (bleedLevels (BenchPoint::ofCard (card, source, ""), 35).fundamentalsDb, -48.54, 0.01);
}

// Two keys an octave apart, all partials added by hand.
TEST (BleedStudy, OctavesAddAsAmplitudes)
{
    auto card = bareCard();
    card.taps.front().sourceOhms = 47e3;
    auto source = keySourceForCardAlone (card);
    source.lowestKey = 57;
    source.highestKey = 69;
    double idle = 0.0;
    double played = 0.0;
    std::vector<std::vector<double>> tables;
    for (int key = 57; key < 69; ++key) // A3 (idle) .. G#4 have no frequency in common; A4 is played
    {
        const double hz = source.tuning.keyHz (key);
        for (int n = 1; n * hz <= 20000.0 * (1.0 + 1e-9); n += 2)
        {
            const double stray = 2.0 * std::numbers::pi * n * hz * 2e-12 * 47e3;
            idle += stray * stray / (1.0 + stray * stray) / (n * n);
        }
    }
    for (int n = 1; n * 440.0 <= 20000.0; n += 2)
        played += 1.0 / (n * n);
    const auto found = bleedLevels (BenchPoint::ofCard (card, source, ""), 69);
    EXPECT_NEAR (found.levelDb, 10.0 * std::log10 (idle / played), 1e-6);

    // With the two As idle only: A4's third is no partial of A3's square, the squares' sum is that of powers; a
    // staircase of two ranks holds A4's wave as well, and there the amplitudes meet.
    EXPECT_GT (bleedLevels (BenchPoint::ofCard (card, source, ""), 69, 4e-12).levelDb, found.levelDb + 6.0);
}

TEST (BleedStudy, NothingGetsIntoAnIdealSource)
{
    const auto card = bareCard();
    const auto found = bleedLevels (BenchPoint::ofCard (card, keySourceForCardAlone (card), ""), 60);
    EXPECT_EQ (found.levelDb, -std::numeric_limits<double>::infinity());
    EXPECT_EQ (found.fundamentalsDb, -std::numeric_limits<double>::infinity());
}

} // namespace stopwright::test

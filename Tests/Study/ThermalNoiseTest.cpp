// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ThermalNoise.h"

#include "Organ/TestOrgan.h"

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

} // namespace stopwright::test

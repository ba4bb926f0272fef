// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/InputStress.h"

#include "Organ/TestOrgan.h"
#include "Study/InputSurvey.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright::test
{

namespace
{

const std::vector<HeldKey> oneKey { { "Upper", 60 } };

} // namespace

// Ohm's law with a diode of 0.6 V.
TEST (InputStress, IsOhmsLaw)
{
    const InputLimits limits { 0.6, 1e-3, { -6.0, 9.0 } };
    const auto hard = inputStress ({ 10.0, 1000.0, 0.0 }, limits);
    EXPECT_NEAR (hard.ampsOn, 3.4e-3, 1e-12); // (10 - 6 - 0.6) / 1 k, the nearer rail
    EXPECT_NEAR (hard.ampsOff, 9.4e-3, 1e-12);
    EXPECT_NEAR (hard.seriesOhmsOn, 2400.0, 1e-9);
    EXPECT_NEAR (hard.seriesOhmsOff, 8400.0, 1e-9);
    // With the resistor it asks for, the limit is just met.
    EXPECT_NEAR (inputStress ({ 10.0, 1000.0, hard.seriesOhmsOff }, limits).ampsOff, 1e-3, 1e-12);
    const auto soft = inputStress ({ 0.5, 0.0, 0.0 }, limits);
    EXPECT_EQ (soft.ampsOn, 0.0);
    EXPECT_EQ (soft.ampsOff, 0.0);
    EXPECT_EQ (soft.seriesOhmsOff, 0.0);
    EXPECT_TRUE (std::isinf (inputStress ({ 10.0, 0.0, 0.0 }, limits).ampsOff));
}

// A square of 24 V peak to peak through 47 k into a virtual earth of 47 k with rails of 6 V: 12 V peak wanted, so that
// (12 - 6) / 47 k flow into 47 k beside 47 k, 3 V; with the supplies off 12 V through 47 k.
TEST (InputSurvey, AVirtualEarth)
{
    MixingBus bus;
    bus.kind = BusKind::virtualEarth;
    bus.feedbackOhms = 47e3;
    bus.rails = SupplyRails { -6.0, 6.0 };
    auto organ = emptyOrgan (bus);
    organ.add ("Square", bareCard ("8", 24.0));
    const auto readings = inputSurvey (organ.instrument, organ.cards, oneKey, {}, 0.0);
    ASSERT_EQ (readings.size(), 1U);
    EXPECT_NEAR (readings[0].on.peakVolts, 3.0, 1e-4);
    EXPECT_NEAR (readings[0].on.sourceOhms, 23.5e3, 1e-6);
    EXPECT_EQ (readings[0].stress.ampsOn, 0.0) << "3 V is within the rails";
    ASSERT_TRUE (readings[0].off);
    EXPECT_NEAR (readings[0].off->peakVolts, 12.0, 1e-3);
    EXPECT_NEAR (readings[0].stress.ampsOff, (12.0 - 0.6) / 47e3, 1e-8);
    EXPECT_EQ (readings[0].stress.seriesOhmsOff, 0.0);
}

// 24 V through 4.7 k onto a wire of 100 k into an amplifier with rails of 6 V, and a second stage behind it.
TEST (InputSurvey, ABareWireIntoAnAmplifier)
{
    auto organ = emptyOrgan (passiveBus());
    organ.add ("Square", bareCard ("8", 48.0), "Upper", "Bus", 4.7e3);
    auto& stages = organ.instrument.preamps.front().stages;
    stages.resize (2);
    organ.cards.ofStages.front().resize (2);
    for (std::size_t stage = 0; stage < 2; ++stage)
    {
        stages[stage].name = "Stage " + std::to_string (stage);
        stages[stage].rails = SupplyRails { -6.0, 6.0 };
    }
    const auto readings = inputSurvey (organ.instrument, organ.cards, oneKey, {}, 1e3);
    ASSERT_EQ (readings.size(), 2U);
    const double volts = 24.0 * 100e3 / 104.7e3;
    const double ohms = 4.7e3 * 100e3 / 104.7e3;
    EXPECT_NEAR (readings[0].on.peakVolts, volts, 1e-3);
    EXPECT_NEAR (readings[0].on.sourceOhms, ohms, 1e-6);
    EXPECT_NEAR (readings[0].stress.ampsOn, (volts - 6.6) / (ohms + 1e3), 1e-6);
    EXPECT_NEAR (readings[0].stress.ampsOff, (volts - 0.6) / (ohms + 1e3), 1e-6);
    EXPECT_NEAR (readings[0].stress.seriesOhmsOff, (volts - 0.6) / 1e-3 - ohms, 2.0);
    EXPECT_EQ (readings[1].on.peakVolts, 6.0) << "the stage before it gives no more";
    EXPECT_FALSE (readings[1].off) << "it is off too";
}

// An inverting amplifier of 47 k and 470 k behind that wire: what is too much meets the wire's impedance and 47 k in series.
TEST (InputSurvey, ABareWireIntoAnInvertingAmplifier)
{
    auto organ = emptyOrgan (passiveBus());
    organ.add ("Square", bareCard ("8", 4.0), "Upper", "Bus", 4.7e3);
    auto& stage = organ.instrument.preamps.front().stages.emplace_back();
    organ.cards.ofStages.front().emplace_back();
    stage.gain = -10.0;
    stage.coupling = Coupling { 1.0, 47e3 }; // a farad: flat
    stage.rails = SupplyRails { -6.0, 6.0 };
    const auto readings = inputSurvey (organ.instrument, organ.cards, oneKey, {}, 0.0);
    ASSERT_EQ (readings.size(), 1U);
    const double wire = 4.7e3 * 100e3 / 104.7e3;
    const double ohms = 1.0 / (1.0 / (wire + 47e3) + 1.0 / 470e3);
    EXPECT_NEAR (readings[0].on.sourceOhms, ohms, 1e-3);
    EXPECT_NEAR (readings[0].on.peakVolts, (20.0 * 100e3 / 104.7e3 - 6.0) / 470e3 * ohms, 1e-3);
    ASSERT_TRUE (readings[0].off);
    EXPECT_NEAR (readings[0].off->sourceOhms, wire + 47e3, 1e-3);
}

} // namespace stopwright::test

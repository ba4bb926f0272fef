// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/JunctionLaw.h"

#include "Circuit/DeviceNetworks.h"

#include <cmath>
#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

struct Currents
{
    double amps[2] = {};
    double own[2] = {};
    double cross[2] = {};
};

Currents at (const JunctionLaw& law, double first, double second = 0.0)
{
    const double volts[] = { first, second };
    Currents result;
    law.evaluate (volts, result.amps, result.own, result.cross);
    return result;
}

} // namespace

// k = 1.380649e-23 J/K and q = 1.602176634e-19 C, exact in the SI of 2019.
TEST (JunctionLaw, ThermalVoltageIsThatOf300Kelvin)
{
    EXPECT_NEAR (JunctionLaw::thermalVolts, 1.380649e-23 * 300.0 / 1.602176634e-19, 5e-9);
}

// Closed form: Shockley's equation, and the conductance that lies in parallel.
TEST (JunctionLaw, DiodeFollowsTheExponential)
{
    const JunctionLaw law (signalDiode());
    for (const double volts : { -20.0, -0.1, 0.0, 0.2, 0.6 })
        EXPECT_NEAR (at (law, volts).amps[0], 2.52e-9 * std::expm1 (volts / 45.3e-3) + 1e-12 * volts,
                     1e-12 * std::abs (at (law, volts).amps[0]) + 1e-22)
            << volts;
}

// Closed form: gm = Ic / Vt, 38.68 mS at 1 mA and 300 K; base current Ic / beta.
TEST (JunctionLaw, ActiveTransistorHasItsGainAndTransconductance)
{
    const JunctionLaw law (silicon());
    const auto currents = at (law, JunctionLaw::thermalVolts * std::log (1e-3 / 1e-14), -5.0);
    const double collector = -currents.amps[1];
    const double base = currents.amps[0] + currents.amps[1];
    EXPECT_NEAR (collector, 1e-3, 1e-10);
    EXPECT_NEAR (base, 1e-3 / 200.0, 1e-10);
    EXPECT_NEAR (-currents.cross[1], 38.68e-3, 5e-6);
    EXPECT_NEAR (-currents.cross[1], 1e-3 / JunctionLaw::thermalVolts, 1e-10);
}

// Closed form: with the transistor upside down the gain is the reverse one.
TEST (JunctionLaw, ReversedTransistorHasItsReverseGain)
{
    const JunctionLaw law (silicon());
    const auto currents = at (law, -5.0, 0.6);
    const double emitter = -currents.amps[0];
    const double base = currents.amps[0] + currents.amps[1];
    EXPECT_NEAR (emitter / base, 2.0, 1e-6);
}

// Closed form: the current at collector volts -v is 1 + v / VA of that at zero collector-base volts.
TEST (JunctionLaw, EarlyVoltageTiltsTheCollectorCurrent)
{
    const JunctionLaw law (silicon (74.0));
    EXPECT_NEAR (at (law, 0.6, -7.4).amps[1] / at (law, 0.6, 0.0).amps[1], 1.1, 1e-7);
    EXPECT_GT (at (JunctionLaw (silicon()), 0.6, -7.4).amps[1] / at (JunctionLaw (silicon()), 0.6, 0.0).amps[1],
               0.9999999);
}

// Closed form: open emitter, blocked collector junction: leak plus the junction's own saturation current.
TEST (JunctionLaw, LeakageFlowsFromCollectorToBase)
{
    const JunctionLaw leaky (germanium (4e-6));
    const JunctionLaw tight (germanium (0.0));
    EXPECT_NEAR (at (leaky, -1.0, -6.0).amps[1] - at (tight, -1.0, -6.0).amps[1], -4e-6, 1e-15);
}

TEST (JunctionLaw, SlopesAreThoseOfTheCurrents)
{
    constexpr double step = 1e-6;
    for (const auto& transistor : { silicon(), silicon (50.0), germanium (3e-6) })
    {
        const JunctionLaw law (transistor);
        for (const double be : { -2.0, 0.1, 0.25 })
            for (const double bc : { -3.0, -0.01, 0.01, 0.2 })
            {
                const auto here = at (law, be, bc);
                for (int branch = 0; branch < 2; ++branch)
                {
                    const double alongBe =
                        (at (law, be + step, bc).amps[branch] - at (law, be - step, bc).amps[branch]) / (2.0 * step);
                    const double alongBc =
                        (at (law, be, bc + step).amps[branch] - at (law, be, bc - step).amps[branch]) / (2.0 * step);
                    const double size = std::abs (here.own[0]) + std::abs (here.own[1]);
                    EXPECT_NEAR (branch == 0 ? here.own[0] : here.cross[1], alongBe, 1e-7 * size + 1e-15);
                    EXPECT_NEAR (branch == 1 ? here.own[1] : here.cross[0], alongBc, 1e-7 * size + 1e-15);
                }
            }
    }
}

TEST (JunctionLaw, StaysFiniteFarBeyondAnyCircuit)
{
    for (const double volts : { -1e6, 1e6, 1e12 })
    {
        const auto currents = at (JunctionLaw (silicon (50.0)), volts, volts);
        EXPECT_TRUE (std::isfinite (currents.amps[0] + currents.amps[1] + currents.own[0] + currents.own[1])) << volts;
    }
}

// Closed form: at the knee the slope is that of the resistance.
TEST (JunctionLaw, KneeIsWhereTheSlopesMeet)
{
    const JunctionLaw law (signalDiode());
    for (const double ohms : { 10.0, 1e3, 1e6 })
        EXPECT_NEAR (at (law, law.kneeVolts (ohms)).own[0] * ohms, 1.0, 1e-5) << ohms;
    EXPECT_TRUE (std::isinf (law.kneeVolts (0.0)));
}

// Closed form: one step in the current above the knee, none of it below.
TEST (JunctionLaw, LimitsStepsAboveTheKnee)
{
    const JunctionLaw law (signalDiode());
    const double knee = law.kneeVolts (1e3);
    EXPECT_EQ (law.limited (knee - 0.01, knee + 0.3, knee), knee - 0.01);
    EXPECT_EQ (law.limited (-30.0, 0.6, knee), -30.0);
    EXPECT_EQ (law.limited (0.601, 0.6, knee), 0.601);
    EXPECT_NEAR (law.limited (5.0, 0.6, knee), 0.6 + 45.3e-3 * std::log (1.0 + 4.4 / 45.3e-3), 1e-12);
    EXPECT_NEAR (law.limited (5.0, -1.0, knee), knee + 45.3e-3 * std::log (1.0 + (5.0 - knee) / 45.3e-3), 1e-12);
    EXPECT_NEAR (law.limited (0.58, 0.6, knee), 0.6 + 45.3e-3 * std::log (1.0 - 0.02 / 45.3e-3), 1e-12);
    EXPECT_EQ (law.limited (0.5, 0.6, knee), knee);
    EXPECT_EQ (law.limited (5.0, 0.6, law.kneeVolts (0.0)), 5.0);
}

} // namespace stopwright

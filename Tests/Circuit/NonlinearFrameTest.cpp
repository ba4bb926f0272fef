// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/CircuitRun.h"
#include "Circuit/DeviceNetworks.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double rateHz = 192000.0;

std::vector<double> sine (int count, double volts, double frequencyHz)
{
    return samplesOf (count, [=] (int index)
                      { return volts * std::sin (2.0 * std::numbers::pi * frequencyHz * (index + 1) / rateHz); });
}

} // namespace

// What is solved outside, a load here, and what is solved inside are one network.
TEST (NonlinearFrame, ALoadOutsideIsALoadInside)
{
    const double loadOhms = 1e3;
    const auto open = commonEmitter (silicon()).output ("out");
    DeviceRun inside (commonEmitter (silicon()).resistor ("RX", "out", "0", loadOhms).output ("out"), rateHz);
    NonlinearCircuit outside (open, { "out" }, rateHz);
    ASSERT_TRUE (outside.takesCurrent());
    double amps = 0.0;
    for (const double input : sine (2000, 0.5, 1000.0))
    {
        outside.openFrame ({ &input, 1 });
        for (int step = 0; step < 8; ++step)
        {
            const auto answer = outside.tryFrame (amps);
            amps -= (amps + answer.volts / loadOhms) / (1.0 + answer.ohms / loadOhms);
        }
        double output = 0.0;
        outside.closeFrame (amps, { &output, 1 });
        ASSERT_NEAR (output, inside.step (input), 1e-7);
    }
    EXPECT_EQ (outside.fallbackCount(), 0);
}

TEST (NonlinearFrame, TryingMovesNothing)
{
    NonlinearCircuit tried (emitterFollower (1e-6).output ("out"), { "out", "e" }, rateHz);
    NonlinearCircuit plain (emitterFollower (1e-6).output ("out"), { "out", "e" }, rateHz);
    for (const double input : sine (300, 4.0, 2000.0))
    {
        double fromTried[2] = {};
        double fromPlain[2] = {};
        tried.openFrame ({ &input, 1 });
        const auto low = tried.tryFrame (-1e-4);
        const auto high = tried.tryFrame (1e-4);
        const auto here = tried.tryFrame (0.0);
        EXPECT_GT (high.volts, low.volts);
        EXPECT_GT (here.ohms, 0.0);
        tried.closeFrame (0.0, fromTried);
        plain.openFrame ({ &input, 1 });
        plain.closeFrame (0.0, fromPlain);
        EXPECT_EQ (here.volts, fromTried[0]);
        ASSERT_NEAR (fromTried[0], fromPlain[0], 1e-9);
        ASSERT_NEAR (fromTried[1], fromPlain[1], 1e-9);
    }
}

TEST (NonlinearFrame, TheSlopeOfAnAnswerIsThatOfItsVolts)
{
    NonlinearCircuit circuit (clipper (2.2e3, 10e-9).output ("out"), { "out" }, rateHz);
    for (const double input : sine (200, 3.0, 1000.0))
    {
        circuit.openFrame ({ &input, 1 });
        const double up = circuit.tryFrame (1e-6).volts;
        const double down = circuit.tryFrame (-1e-6).volts;
        const auto here = circuit.tryFrame (0.0);
        EXPECT_NEAR (here.ohms, (up - down) / 2e-6, 1e-3 * here.ohms);
        double output = 0.0;
        circuit.closeFrame (0.0, { &output, 1 });
    }
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NonlinearCircuit.h"

#include "Circuit/CircuitRun.h"
#include "Circuit/DeviceNetworks.h"
#include "Circuit/DiodeClipperTable.h"
#include "Circuit/FindingSearch.h"
#include "Circuit/SampleNetworks.h"
#include "Circuit/SmallSignal.h"
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"
#include "Units/Error.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double rateHz = 192000.0;

std::vector<double> sine (int count, double volts, double frequencyHz, double sampleRateHz = rateHz)
{
    return samplesOf (count, [=] (int index)
                      { return volts * std::sin (2.0 * std::numbers::pi * frequencyHz * (index + 1) / sampleRateHz); });
}

/// The clipper of the table at its times, at a rate that is a multiple of its 32 kHz.
std::vector<double> clippedVolts (int samplesPerRow)
{
    DeviceRun clipped (clipper (2.2e3, 10e-9).output ("out"), 32000.0 * samplesPerRow);
    const auto output = clipped.run (sine (samplesPerRow * 64, 5.0, 1000.0, 32000.0 * samplesPerRow));
    std::vector<double> volts;
    for (std::size_t row = 1; row <= 64; ++row)
        volts.push_back (output[static_cast<std::size_t> (samplesPerRow) * row - 1]);
    EXPECT_EQ (clipped.circuit.fallbackCount(), 0);
    return volts;
}

double clipperError (const std::vector<double>& volts)
{
    double largest = 0.0;
    for (std::size_t row = 0; row < 64; ++row)
        largest = std::max (largest, std::abs (volts[row] - diodeClipperVolts[row]));
    return largest;
}

/// Response at a frequency to a sine so small that nothing bends, against the analysis at the warped frequency.
void expectSmallSignal (const Netlist& netlist, int cycles)
{
    constexpr int period = 19200;
    constexpr double volts = 1e-6;
    DeviceRun stage (netlist, rateHz);
    const auto input = sine (period, volts, 10.0 * cycles);
    for (int wait = 0; wait < 20; ++wait)
        stage.run (input);
    const auto ratio = bin (stage.run (input), cycles) / bin (input, cycles);
    const double warpedHz = rateHz / std::numbers::pi * std::tan (std::numbers::pi * 10.0 * cycles / rateHz);
    const auto expected = SmallSignal (netlist).response ("W1", netlist.output, warpedHz);
    // 1 uV moves an exponential by 4e-5 of itself; its square does not reach the fundamental, and the tangents of the
    // solver are good to 1e-8 of such a signal.
    EXPECT_LT (std::abs (ratio - expected), 1e-6 * std::abs (expected)) << cycles;
    EXPECT_EQ (stage.circuit.fallbackCount(), 0);
}

} // namespace

TEST (NonlinearCircuit, RunsLinearNetworksAsTheLinearOne)
{
    for (const auto& sample : sampleNetworks())
    {
        if (sample.netlist.sources.size() != 1)
            continue;
        CircuitRun linear (sample.netlist, rateHz);
        DeviceRun nonlinear (sample.netlist, rateHz);
        const auto input = sine (500, 1.0, 440.0);
        const auto expected = linear.run (input);
        const auto found = nonlinear.run (input);
        double peak = 0.0;
        for (const double volts : expected)
            peak = std::max (peak, std::abs (volts));
        for (std::size_t index = 0; index < input.size(); ++index)
            ASSERT_NEAR (found[index], expected[index], tolerance::blockStep * peak) << sample.name << index;
    }
}

// Against an independent solution of the differential equation, see MakeDiodeClipperTable.py. The trapezoidal rule is of
// second order: twice the rate, a quarter of the error, and what is left after extrapolating to an infinite rate
// (Richardson) is of fourth order.
TEST (NonlinearCircuit, DiodeClipperFollowsItsDifferentialEquation)
{
    const auto coarse = clippedVolts (128);
    const auto fine = clippedVolts (256);
    std::vector<double> extrapolated;
    for (std::size_t row = 0; row < 64; ++row)
        extrapolated.push_back ((4.0 * fine[row] - coarse[row]) / 3.0);
    EXPECT_LT (clipperError (extrapolated), 1e-8);
    EXPECT_LT (clipperError (fine), 3e-6);
    EXPECT_NEAR (clipperError (coarse) / clipperError (fine), 4.0, 0.05);
    // As played live, at 192 kHz, where the tap's 5 V sine crosses zero in 30 us: 0.6 % of the clipped volts.
    EXPECT_LT (clipperError (clippedVolts (6)), 4e-3);
}

// The table's peak is 0.6152 V; without its diodes the output would follow the tap to 4.9 V.
TEST (NonlinearCircuit, ClipperClipsOnBothSidesAlike)
{
    DeviceRun clipped (clipper (2.2e3, 10e-9).output ("out"), rateHz);
    const auto output = clipped.run (sine (1920, 5.0, 1000.0));
    const auto [low, high] = std::minmax_element (output.begin() + 192, output.end());
    EXPECT_NEAR (*high, -*low, 1e-6);
    EXPECT_NEAR (*high, 0.6152, 1e-3);
}

TEST (NonlinearCircuit, TinySignalsFollowTheSmallSignalAnalysis)
{
    for (const int cycles : { 4, 44, 700 })
    {
        expectSmallSignal (commonEmitter (silicon()).output ("out"), cycles);
        expectSmallSignal (commonEmitter (silicon (60.0)).output ("out"), cycles);
        expectSmallSignal (emitterFollower (1e-6).output ("out"), cycles);
        expectSmallSignal (clipper (10e3, 10e-9).output ("out"), cycles);
    }
}

// Closed form: a follower lets go when all of its emitter current flows into the load: -0.7 mA (10 k || 4.7 k) =
// -2.238 V, whatever the supply. Upward it follows to the full 5 V less what the emitter resistance takes.
TEST (NonlinearCircuit, FollowerSinksNoMoreThanItsEmitterCurrent)
{
    DeviceRun follower (emitterFollower (10e-3).output ("out"), rateHz);
    const auto output = follower.run (sine (960, -5.0, 200.0));
    EXPECT_NEAR (*std::min_element (output.begin(), output.end()), -2.238, 1e-3);
    EXPECT_GT (*std::max_element (output.begin(), output.end()), 4.8);
    EXPECT_EQ (follower.circuit.fallbackCount(), 0);
}

TEST (NonlinearCircuit, StaysAtItsOperatingPoint)
{
    for (const auto& netlist : { commonEmitter (silicon()).output ("c"), emitterFollower (1e-6).output ("e"),
                                 commonEmitter (germanium (2e-6)).output ("c") })
    {
        DeviceRun stage (netlist, rateHz);
        EXPECT_GT (std::abs (stage.circuit.restingVolts (0)), 0.3);
        for (const double volts : stage.run (std::vector<double> (2000, 0.0)))
            ASSERT_NEAR (volts, stage.circuit.restingVolts (0), 1e-8);
        stage.run (sine (500, 1.0, 1000.0));
        stage.circuit.reset();
        EXPECT_NEAR (stage.step (0.0), stage.circuit.restingVolts (0), 1e-8);
    }
}

TEST (NonlinearCircuit, KnobsLeadToTheRestOfTheNewValues)
{
    const auto withCollector = [] (double ohms)
    {
        auto netlist = commonEmitter (silicon()).output ("c");
        for (auto& part : netlist.parts)
            if (part.name == "RC")
                part.value = Resistor { ohms };
        return netlist;
    };
    DeviceRun turned (withCollector (10e3), rateHz);
    const DeviceRun built (withCollector (4.7e3), rateHz);
    turned.circuit.setKnobTarget (turned.knob ("RC"), 4.7e3);
    double last = turned.circuit.restingVolts (0);
    double largestStep = 0.0;
    for (int sample = 0; sample < 200000; ++sample)
    {
        const double volts = turned.step (0.0);
        largestStep = std::max (largestStep, std::abs (volts - last));
        last = volts;
    }
    EXPECT_FALSE (turned.circuit.isMoving());
    EXPECT_NEAR (last, built.circuit.restingVolts (0), 1e-6);
    // The collector resistor's 5 V fall away over 20 ms in 240 steps of the ramp or so.
    EXPECT_LT (largestStep, 0.05);
    EXPECT_GT (std::abs (built.circuit.restingVolts (0) - turned.circuit.restingVolts (0)), 2.0);
}

TEST (NonlinearCircuit, AJumpKeepsTheCharge)
{
    DeviceRun clipped (clipper (2.2e3, 1e-6).output ("out"), rateHz);
    clipped.run (sine (300, 2.0, 1000.0));
    const double before = clipped.step (2.0);
    clipped.circuit.setKnobNow (clipped.knob ("R1"), 100e3);
    // 2 V over 100 k for one sample into 1 uF is 0.1 mV; the diodes discharge by no more than their 1 mA, 5 mV.
    EXPECT_NEAR (clipped.step (2.0), before, 6e-3);
    clipped.circuit.setKnobNow (clipped.knob ("R1"), 100e3);
    EXPECT_EQ (clipped.circuit.fallbackCount(), 0);
}

TEST (NonlinearCircuit, AnotherCircuitGoesOnFromTheSameCharge)
{
    DeviceRun old (commonEmitter (silicon()).output ("out"), rateHz);
    old.run (sine (777, 0.05, 440.0));
    DeviceRun fresh (commonEmitter (silicon()).output ("out"), rateHz);
    fresh.circuit.adoptStates (old.circuit, fresh.circuit.adoptionMap (old.circuit));
    const auto next = sine (400, 0.05, 440.0);
    const auto expected = old.run (next);
    const auto found = fresh.run (next);
    // The first sample, in which the tap jumps besides, is taken as two backward Euler halves, which leaves a little.
    for (std::size_t index = 0; index < next.size(); ++index)
        ASSERT_NEAR (found[index], expected[index], 1e-4) << index;
    EXPECT_EQ (fresh.circuit.stateNames(), (std::vector<std::string> { "C1", "C2" }));
}

// Whatever comes in and however the knobs turn, what comes out is finite. Many of these networks have junctions right
// across an ideal tap or supply, onto which it jumps by up to 100 V: no law is met there, and none needs to be.
TEST (NonlinearCircuit, RandomNetworksStayFinite)
{
    Random random (20240611);
    int ran = 0;
    long gentleSamples = 0;
    long gentleFallbacks = 0;
    for (int trial = 0; trial < 400; ++trial)
    {
        const auto netlist = randomDeviceNetwork (random);
        if (! isAccepted (netlist))
            continue;
        ++ran;
        DeviceRun stage (netlist, random.chance (0.5) ? rateHz : 44100.0);
        const double size = random.logUniform (0.01, 100.0);
        double input = 0.0;
        for (int sample = 0; sample < 400; ++sample)
        {
            if (random.chance (0.1))
                input = random.uniform (-size, size);
            if (random.chance (0.01))
                stage.circuit.setKnobNow (stage.knob ("G0"), random.logUniform (10.0, 1e8));
            if (random.chance (0.01))
                stage.circuit.setKnobTarget (stage.knob ("G1"), random.logUniform (10.0, 1e8));
            ASSERT_TRUE (std::isfinite (stage.step (input))) << trial << ' ' << sample;
        }
        if (netlist.sources.front().sourceOhms < 1e3 || size > 20.0)
            continue;
        gentleSamples += 400;
        gentleFallbacks += stage.circuit.fallbackCount();
    }
    EXPECT_GT (ran, 120);
    // Behind a resistance, with jumps as an instrument has them, all but a few in a thousand settle at once.
    EXPECT_GT (gentleSamples, 8000);
    EXPECT_LT (gentleFallbacks, gentleSamples / 500);
}

TEST (NonlinearCircuit, ATapThatIsNotFiniteIsSurvived)
{
    DeviceRun stage (commonEmitter (silicon()).output ("out"), rateHz);
    stage.run (sine (100, 0.1, 1000.0));
    for (const double input :
         { std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(), 1e300, -1e300, 0.0 })
        EXPECT_TRUE (std::isfinite (stage.step (input))) << input;
    EXPECT_GE (stage.circuit.fallbackCount(), 2);
    double last = 0.0;
    for (int sample = 0; sample < 100000; ++sample)
        last = stage.step (0.0);
    EXPECT_NEAR (last, stage.circuit.restingVolts (0), 1e-6);
}

TEST (NonlinearCircuit, RefusesWhatItCannotRun)
{
    const auto netlist = clipper (1e3, 1e-9).output ("out");
    EXPECT_THROW (NonlinearCircuit (netlist, { "nowhere" }, rateHz), Error);
    EXPECT_THROW (NonlinearCircuit (netlist, {}, rateHz), Error);
    EXPECT_THROW (NonlinearCircuit (netlist, { "out" }, -1.0), Error);
}

} // namespace stopwright

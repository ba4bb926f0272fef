// SPDX-License-Identifier: GPL-3.0-or-later
//
// What happens while values change: energy, jumps, ramps, and random turning of everything.
#include "Circuit/CayleyStep.h"
#include "Circuit/CircuitRun.h"
#include "Circuit/NetlistSketch.h"
#include "Circuit/SampleNetworks.h"
#include "Circuit/StateSpaceBuilder.h"
#include "Support/Tolerances.h"
#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <iostream>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double sampleRateHz = 192000.0;
constexpr double jumpRateHz = 48000.0;

Netlist lowPass (double ohms)
{
    return NetlistSketch()
        .tap ("in", "a")
        .resistor ("R1", "a", "b", ohms)
        .capacitor ("C1", "b", "0", 10e-9)
        .output ("b");
}

/// The low-pass in the form that stores s = x + (h/2) x' from one sample to the next: the negative twin.
class StoredDerivativeLowPass
{
public:
    double step (double input, double ohms)
    {
        const double g = 0.5 / (jumpRateHz * ohms * 10e-9);
        const double x = (stored_ + g * input) / (1.0 + g);
        stored_ = x + g * (input - x);
        return x;
    }

    void charge (double volts, double ohms) { stored_ = volts * (1.0 - 0.5 / (jumpRateHz * ohms * 10e-9)); }

private:
    double stored_ = 0.0;
};

struct TurnableKnob
{
    int index = 0;
    double low = 0.0;
    double high = 0.0;
};

/// Knobs of every part of the netlist with the span they are turned over.
std::vector<TurnableKnob> knobsOf (const CircuitRun& run, const Netlist& netlist)
{
    std::vector<TurnableKnob> knobs;
    const auto add = [&] (const std::string& part, KnobKind kind, double low, double high)
    {
        if (const auto index = run.circuit.findKnob ({ part, kind }))
            knobs.push_back ({ *index, low, high });
    };
    for (const auto& part : netlist.parts)
    {
        const bool isCapacitor = std::holds_alternative<Capacitor> (part.value);
        const bool isInductor = std::holds_alternative<Inductor> (part.value);
        add (part.name, KnobKind::value,
             isCapacitor  ? 1e-11
             : isInductor ? 1e-3
                          : 10.0,
             isCapacitor  ? 1e-5
             : isInductor ? 10.0
                          : 1e7);
        add (part.name, KnobKind::position, 1e-6, 1.0);
        add (part.name, KnobKind::windingOhms, 0.1, 1e3);
        add (part.name, KnobKind::selfFarads, 1e-12, 1e-9);
        add (part.name, KnobKind::gainBandwidthHz, 1e5, 1e7);
    }
    add ("in", KnobKind::sourceOhms, 1.0, 1e6);
    return knobs;
}

void turnOne (CircuitRun& run, const std::vector<TurnableKnob>& knobs, Random& random, bool atOnce)
{
    const auto& knob = knobs[static_cast<std::size_t> (random.integer (0, static_cast<int> (knobs.size()) - 1))];
    const double value = random.logUniform (knob.low, knob.high);
    if (atOnce)
        run.circuit.setKnobNow (knob.index, value);
    else
        run.circuit.setKnobTarget (knob.index, value);
}

/// Largest component above 6 kHz in dB re the largest output, by a linear-phase high-pass (windowed sinc, 1025 taps,
/// Blackman-Harris) over a run in which R1 goes from 100 kilohms to 1 kilohm under a sine of 220 Hz.
double residueDb (const std::function<void (CircuitRun&)>& turn)
{
    CircuitRun run (lowPass (100e3), sampleRateHz);
    const auto sine = [] (int index) { return std::sin (2.0 * std::numbers::pi * 220.0 * index / sampleRateHz); };
    auto output = run.run (samplesOf (12000, sine));
    turn (run);
    const auto rest = run.run (samplesOf (12000, [&] (int index) { return sine (12000 + index); }));
    output.insert (output.end(), rest.begin(), rest.end());

    constexpr int half = 512;
    const auto tap = [] (int k)
    {
        const double low = 2.0 * 6000.0 / sampleRateHz;
        const double sinc = k == 0 ? low : std::sin (std::numbers::pi * low * k) / (std::numbers::pi * k);
        const double angle = std::numbers::pi * k / half;
        const double window =
            0.35875 + 0.48829 * std::cos (angle) + 0.14128 * std::cos (2 * angle) + 0.01168 * std::cos (3 * angle);
        return (k == 0 ? 1.0 : 0.0) - sinc * window;
    };
    const auto taps = samplesOf (2 * half + 1, [&] (int k) { return tap (k - half); });
    double residue = 0.0;
    double peak = 0.0;
    for (std::size_t centre = 9000; centre < output.size() - half; ++centre)
    {
        double sum = 0.0;
        for (std::size_t k = 0; k < taps.size(); ++k)
            sum += taps[k] * output[centre - half + k];
        residue = std::max (residue, std::abs (sum));
        peak = std::max (peak, std::abs (output[centre]));
    }
    return 20.0 * std::log10 (residue / peak);
}

} // namespace

TEST (ValueChanges, NeverAddEnergyToAPassiveNetwork)
{
    Random random (61);
    for (int trial = 0; trial < 60; ++trial)
    {
        const auto netlist = randomPassiveNetwork (random);
        CircuitRun run (netlist, sampleRateHz);
        const auto knobs = knobsOf (run, netlist);
        run.run (samplesOf (300, [&] (int) { return random.uniform (-5.0, 5.0); }));
        run.step (0.0);
        run.step (0.0);
        double most = run.circuit.storedEnergy();
        for (int sample = 0; sample < 300; ++sample)
        {
            if (random.chance (0.5))
                turnOne (run, knobs, random, true);
            const double before = run.circuit.storedEnergy();
            most = std::max (most, before);
            run.step (0.0);
            // The rounding is that of the largest energy there was: turning a capacitor down throws energy away.
            EXPECT_LE (run.circuit.storedEnergy(), before * (1.0 + 1e-9) + 1e-15 * most) << "trial " << trial;
        }
    }
}

// Closed form: with R at 10 ohms and 100 kilohms in turn, 40 samples multiply by (z10 z100k)^20 with
// z = (1 - h/2RC)/(1 + h/2RC), which is 0.449. The stored-derivative form multiplies the volts a hundredfold.
TEST (ValueChanges, KeepPhysicalStatesStable)
{
    StateSpaceBuilder builder (lowPass (10.0), { "b" });
    auto network = builder.makeStateSpace();
    CayleyStep step (1, 1, 1, jumpRateHz);
    auto values = builder.knobs().values();
    double volts = 1.0, last = 0.0, output = 0.0, input = 0.0, most = 0.0, mostStored = 0.0;
    StoredDerivativeLowPass twin;
    twin.charge (1.0, 10.0);
    const double* from[] = { &input };
    double* to[] = { &output };
    for (int sample = 0; sample < 40; ++sample)
    {
        values[0] = sample % 2 == 0 ? 100e3 : 10.0;
        ASSERT_TRUE (builder.build (values, network) && step.build (network));
        step.run (&volts, &last, from, to, 0, 1);
        most = std::max (most, std::abs (output));
        mostStored = std::max (mostStored, std::abs (twin.step (0.0, values[0])));
    }
    const auto factor = [] (double ohms)
    {
        const double g = 0.5 / (jumpRateHz * ohms * 10e-9);
        return (1.0 - g) / (1.0 + g);
    };
    EXPECT_NEAR (volts, std::pow (factor (10.0) * factor (100e3), 20), tolerance::algebra);
    EXPECT_LE (most, 1.0);
    EXPECT_GT (mostStored, 50.0);
}

// Closed form: after the edge the capacitor stands at one volt and stays there, whatever R becomes.
TEST (ValueChanges, JumpAfterAnEdgeWithoutAnOvershoot)
{
    CircuitRun run (lowPass (10.0), jumpRateHz);
    StoredDerivativeLowPass twin;
    run.step (0.0);
    run.step (1.0);
    twin.step (1.0, 10.0);
    run.circuit.setKnobNow (run.knob ("R1"), 100e3);
    double worst = 0.0, worstStored = 0.0;
    for (int sample = 0; sample < 200; ++sample)
    {
        worst = std::max (worst, std::abs (run.step (1.0) - 1.0));
        worstStored = std::max (worstStored, std::abs (twin.step (1.0, 100e3) - 1.0));
    }
    EXPECT_LT (worst, 0.02);
    EXPECT_GT (worstStored, 0.5);
}

// Closed form: from the jump on, the exact exponential of the new time constant towards the sine's own answer.
TEST (ValueChanges, JumpUnderASineNearTheExactExponential)
{
    CircuitRun run (lowPass (100e3), jumpRateHz);
    const auto sine = [] (double index) { return std::sin (2.0 * std::numbers::pi * 220.0 * index / jumpRateHz); };
    double exact = run.run (samplesOf (4800, sine)).back();
    run.circuit.setKnobNow (run.knob ("R1"), 1e3);
    double worst = 0.0;
    for (int sample = 4800; sample < 5000; ++sample)
    {
        constexpr int parts = 1000;
        for (int part = 0; part < parts; ++part)
        {
            const double decay = std::exp (-1.0 / (jumpRateHz * parts * 1e3 * 10e-9));
            exact = decay * exact + (1.0 - decay) * sine (sample - 1 + (part + 0.5) / parts);
        }
        worst = std::max (worst, std::abs (run.step (sine (sample)) - exact));
    }
    std::cout << "    worst error after the jump: " << worst << '\n';
    EXPECT_LT (worst, 0.1);
}

// A stiff mode, z = -0.98, that a jump excites: damped it is gone after one sample, by the plain step it would ring.
TEST (ValueChanges, JumpWithoutRingingOfStiffModes)
{
    CircuitRun run (lowPass (100e3), jumpRateHz);
    run.step (0.0);
    run.run (std::vector<double> (30, 1.0));
    run.circuit.setKnobNow (run.knob ("R1"), 10.0);
    run.step (1.0);
    EXPECT_NEAR (run.step (1.0), 1.0, 1e-3);
    EXPECT_NEAR (run.step (1.0), 1.0, 1e-3);
}

TEST (ValueChanges, LeaveNoZipperNoise)
{
    const double rampDb = residueDb ([] (CircuitRun& run) { run.circuit.setKnobTarget (run.knob ("R1"), 1e3); });
    const double jumpDb = residueDb ([] (CircuitRun& run) { run.circuit.setKnobNow (run.knob ("R1"), 1e3); });
    std::cout << "    residue above 6 kHz: ramp " << rampDb << " dB, jump " << jumpDb << " dB\n";
    EXPECT_LT (rampDb, tolerance::knobResidueDb);
    EXPECT_GT (jumpDb, -40.0);
}

TEST (ValueChanges, KeepRandomNetworksFinite)
{
    Random random (62);
    int refused = 0;
    for (int trial = 0; trial < 80; ++trial)
    {
        const auto netlist = trial % 2 == 0 ? randomPassiveNetwork (random) : randomActiveNetwork (random);
        std::unique_ptr<CircuitRun> run;
        try
        {
            run = std::make_unique<CircuitRun> (netlist, sampleRateHz);
        }
        catch (const Error&)
        {
            ++refused;
            continue;
        }
        const auto knobs = knobsOf (*run, netlist);
        for (int piece = 0; piece < 300; ++piece)
        {
            turnOne (*run, knobs, random, random.chance (0.1));
            const auto output =
                run->run (samplesOf (random.integer (1, 150), [&] (int) { return random.uniform (-5.0, 5.0); }));
            for (const double sample : output)
                ASSERT_TRUE (std::isfinite (sample)) << "trial " << trial;
        }
    }
    EXPECT_LT (refused, 8);
}

} // namespace stopwright

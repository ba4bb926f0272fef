// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/LinearCircuit.h"

#include "Circuit/CircuitRun.h"
#include "Circuit/NetlistSketch.h"
#include "Circuit/SampleNetworks.h"
#include "Support/Tolerances.h"
#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double sampleRateHz = 192000.0;

Netlist lowPass (double ohms, double farads)
{
    return NetlistSketch()
        .tap ("in", "a")
        .resistor ("R1", "a", "b", ohms)
        .capacitor ("C1", "b", "0", farads)
        .output ("b");
}

double peakOf (const std::vector<double>& samples)
{
    double peak = 0.0;
    for (const double sample : samples)
        peak = std::max (peak, std::abs (sample));
    return peak;
}

double worstDifference (const std::vector<double>& a, const std::vector<double>& b)
{
    double worst = 0.0;
    for (std::size_t index = 0; index < a.size(); ++index)
        worst = std::max (worst, std::abs (a[index] - b[index]));
    return worst / std::max (peakOf (a), 1e-12);
}

std::vector<double> noise (int count, Random& random)
{
    return samplesOf (count, [&] (int) { return random.uniform (-1.0, 1.0); });
}

/// Every netlist of sampleNetworks() with the one source "in".
std::vector<SampleNetwork> oneSourceNetworks()
{
    auto all = sampleNetworks();
    std::erase_if (all, [] (const auto& sample) { return sample.netlist.sources.size() != 1; });
    return all;
}

} // namespace

// Closed form: a source that stood at one for long charges the capacitor to one.
TEST (LinearCircuit, ChargesACapacitor)
{
    CircuitRun run (lowPass (10e3, 10e-9), sampleRateHz);
    const auto output = run.run (std::vector<double> (4000, 1.0));
    EXPECT_NEAR (output.back(), 1.0, tolerance::algebra);
    EXPECT_NEAR (run.circuit.storedEnergy(), 0.5 * 10e-9, 1e-20);
}

// Closed form: a divider, and a network without a source, which stays silent.
TEST (LinearCircuit, RunsWithoutStatesOrSources)
{
    NetlistSketch divider, silent;
    CircuitRun run (divider.tap ("in", "a", 1e3).resistor ("R1", "a", "0", 3e3).output ("a"), sampleRateHz);
    EXPECT_EQ (run.circuit.stateCount(), 0);
    for (const double volts : run.run (std::vector<double> (21, 2.0)))
        EXPECT_NEAR (volts, 1.5, tolerance::algebra);
    CircuitRun quiet (silent.resistor ("R1", "a", "0", 3e3).capacitor ("C1", "a", "0", 1e-9).output ("a"),
                      sampleRateHz);
    EXPECT_EQ (quiet.circuit.sourceCount(), 0);
    EXPECT_EQ (quiet.run (std::vector<double> (21, 2.0)), std::vector<double> (21, 0.0));
}

TEST (LinearCircuit, DoesNotCareHowARunIsCut)
{
    Random random (51);
    for (const auto& sample : oneSourceNetworks())
    {
        const auto input = noise (1000, random);
        CircuitRun whole (sample.netlist, sampleRateHz), cut (sample.netlist, sampleRateHz);
        const auto expected = whole.run (input);
        std::vector<double> output;
        while (output.size() < input.size())
        {
            const auto length =
                std::min<std::size_t> (static_cast<std::size_t> (random.integer (0, 37)), input.size() - output.size());
            const auto begin = input.begin() + static_cast<std::ptrdiff_t> (output.size());
            const auto piece = cut.run ({ begin, begin + static_cast<std::ptrdiff_t> (length) });
            output.insert (output.end(), piece.begin(), piece.end());
        }
        EXPECT_LT (worstDifference (expected, output), tolerance::blockSplit) << sample.name;
    }
}

TEST (LinearCircuit, DoesNotCareHowARunIsCutWhileKnobsMove)
{
    Random random (52);
    const auto input = noise (6000, random);
    std::vector<double> results[2];
    for (const int piece : { 0, 7 })
    {
        CircuitRun run (oneSourceNetworks()[1].netlist, sampleRateHz);
        run.run (std::vector<double> (701, 0.5), piece);
        run.circuit.setKnobTarget (run.knob ("R1"), 4.7e3);
        auto& result = results[piece == 0 ? 0 : 1];
        result = run.run (input, piece);
        EXPECT_FALSE (run.circuit.isMoving());
    }
    EXPECT_LT (worstDifference (results[0], results[1]), tolerance::blockSplit);
}

TEST (LinearCircuit, StartsAfreshAfterReset)
{
    Random random (53);
    for (const auto& sample : oneSourceNetworks())
    {
        const auto input = noise (300, random);
        CircuitRun fresh (sample.netlist, sampleRateHz), used (sample.netlist, sampleRateHz);
        used.run (noise (77, random));
        used.circuit.reset();
        EXPECT_EQ (fresh.run (input), used.run (input)) << sample.name;
        EXPECT_NE (used.run (input), fresh.run (noise (300, random))) << sample.name;
    }
}

TEST (LinearCircuit, FinishesRampsOnReset)
{
    CircuitRun run (lowPass (100e3, 10e-9), sampleRateHz);
    run.circuit.setKnobTarget (run.knob ("R1"), 1e3);
    run.step (0.0);
    EXPECT_TRUE (run.circuit.isMoving());
    run.circuit.reset();
    EXPECT_FALSE (run.circuit.isMoving());
    EXPECT_EQ (run.circuit.knobValue (run.knob ("R1")), 1e3);
    CircuitRun fresh (lowPass (1e3, 10e-9), sampleRateHz);
    const auto input = samplesOf (100, [] (int index) { return std::sin (0.1 * index); });
    EXPECT_EQ (run.run (input), fresh.run (input));
}

TEST (LinearCircuit, RampsForTwentyMilliseconds)
{
    for (const double rateHz : { 176400.0, 192000.0, 48000.0 })
    {
        CircuitRun run (lowPass (100e3, 10e-9), rateHz);
        run.circuit.setKnobTarget (run.knob ("R1"), 1e3);
        int samples = 0;
        while (run.circuit.isMoving())
        {
            run.step (0.0);
            ++samples;
        }
        EXPECT_NEAR (samples / rateHz, LinearCircuit::rampSeconds, 2e-4) << rateHz;
        EXPECT_EQ (run.circuit.knobValue (run.knob ("R1")), 1e3);
    }
}

TEST (LinearCircuit, FindsOnlyTheKnobsThatAreThere)
{
    const CircuitRun run (oneSourceNetworks()[1].netlist, sampleRateHz);
    EXPECT_TRUE (run.circuit.findKnob ({ "L1", KnobKind::selfFarads }));
    EXPECT_TRUE (run.circuit.findKnob ({ "L1", KnobKind::windingOhms }));
    EXPECT_FALSE (run.circuit.findKnob ({ "C1", KnobKind::leakOhms }));
    EXPECT_FALSE (run.circuit.findKnob ({ "in", KnobKind::sourceOhms }));
    EXPECT_FALSE (run.circuit.findKnob ({ "R1", KnobKind::position }));
    EXPECT_FALSE (run.circuit.findKnob ({ "R9", KnobKind::value }));
}

TEST (LinearCircuit, KeepsKnobsInTheirRange)
{
    CircuitRun run (lowPass (100e3, 10e-9), sampleRateHz);
    const int knob = run.knob ("R1");
    run.circuit.setKnobNow (knob, std::numeric_limits<double>::quiet_NaN());
    run.circuit.setKnobTarget (knob, std::numeric_limits<double>::infinity());
    EXPECT_EQ (run.circuit.knobValue (knob), 100e3);
    EXPECT_FALSE (run.circuit.isMoving());
    run.circuit.setKnobNow (knob, -5.0);
    EXPECT_EQ (run.circuit.knobValue (knob), 1e-3);
}

TEST (LinearCircuit, SettlesWhereTheNewValuesSay)
{
    Random random (54);
    const auto sample = oneSourceNetworks()[1];
    CircuitRun turned (sample.netlist, sampleRateHz);
    turned.circuit.setKnobTarget (turned.knob ("C1"), 4.7e-9);
    turned.circuit.setKnobTarget (turned.knob ("R1"), 22e3);
    auto changed = sample.netlist;
    std::get<Capacitor> (changed.parts[2].value).farads = 4.7e-9;
    std::get<Resistor> (changed.parts[0].value).ohms = 22e3;
    CircuitRun built (changed, sampleRateHz);
    const auto sine =
        samplesOf (60000, [] (int index) { return std::sin (2.0 * std::numbers::pi * 440.0 * index / sampleRateHz); });
    const auto a = turned.run (sine);
    const auto b = built.run (sine);
    EXPECT_LT (worstDifference ({ a.end() - 5000, a.end() }, { b.end() - 5000, b.end() }), 1e-9);
}

TEST (LinearCircuit, TakesOverStatesByName)
{
    NetlistSketch before, after;
    before.tap ("in", "a")
        .resistor ("R1", "a", "b", 100e3)
        .capacitor ("C1", "b", "0", 10e-9)
        .capacitor ("C2", "b", "0", 10e-9);
    after.tap ("in", "a")
        .resistor ("R1", "a", "b", 100e3)
        .capacitor ("C2", "b", "0", 10e-9)
        .resistor ("R2", "b", "0", 1e9);
    CircuitRun old (before.output ("b"), sampleRateHz), changed (after.output ("b"), sampleRateHz);
    const double held = old.run (std::vector<double> (200, 1.0)).back();
    EXPECT_GT (held, 0.3);
    EXPECT_LT (held, 0.7);

    // C2 closes a loop with C1 in the old circuit and is a state of its own in the new one.
    const auto map = changed.circuit.adoptionMap (old.circuit);
    changed.circuit.adoptStates (old.circuit, map);
    EXPECT_EQ (changed.circuit.stateNames(), std::vector<std::string> { "C2" });
    EXPECT_NEAR (changed.step (1.0), held, 0.01);
    CircuitRun fresh (after.output ("b"), sampleRateHz);
    EXPECT_LT (fresh.step (1.0), 0.01);
}

TEST (LinearCircuit, TakesOverTheSourceOfACapacitiveDivider)
{
    NetlistSketch sketch;
    sketch.tap ("in", "a")
        .capacitor ("C1", "a", "t", 10e-9)
        .capacitor ("C2", "t", "0", 10e-9)
        .resistor ("R1", "t", "0", 1e6);
    CircuitRun old (sketch.output ("t"), sampleRateHz), other (sketch.output ("t"), sampleRateHz);
    old.run (std::vector<double> (3000, 1.0));
    const double held = old.step (1.0);
    other.circuit.adoptStates (old.circuit, other.circuit.adoptionMap (old.circuit));
    EXPECT_NEAR (other.step (1.0), held, 1e-3);
}

TEST (LinearCircuit, RefusesWhatCannotRun)
{
    const auto netlist = lowPass (1e3, 1e-9);
    EXPECT_THROW (LinearCircuit (netlist, { "nowhere" }, sampleRateHz), Error);
    EXPECT_THROW (LinearCircuit (netlist, { "a", "b", "0", "a", "b" }, sampleRateHz), Error);
    EXPECT_THROW (LinearCircuit (netlist, { "b" }, 0.0), Error);
    EXPECT_THROW (LinearCircuit (lowPass (-1.0, 1e-9), { "b" }, sampleRateHz), Error);
    EXPECT_NO_THROW (LinearCircuit (netlist, { "b", "0" }, sampleRateHz));
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NonlinearCircuit.h"

#include <benchmark/benchmark.h>
#include <cmath>
#include <numbers>
#include <vector>

namespace stopwright
{

namespace
{

constexpr double sampleRateHz = 192000.0;
constexpr int frameCount = 1920;

Part makePart (const std::string& name, const std::vector<std::string>& nodes, const PartValue& value)
{
    return { name, nodes, value, 0.0 };
}

/// 2.2 k into 10 nF and `diodes` diodes to common, the second one the other way round.
Netlist clipper (int diodes)
{
    Netlist netlist;
    netlist.sources.push_back ({ "W1", "in", 0.0 });
    netlist.parts = { makePart ("R1", { "in", "out" }, Resistor { 2.2e3 }),
                      makePart ("C1", { "out", "0" }, Capacitor { 10e-9 }),
                      makePart ("D1", { "out", "0" }, Diode { 2.52e-9, 1.752, 0.0 }) };
    if (diodes > 1)
        netlist.parts.push_back (makePart ("D2", { "0", "out" }, Diode { 2.52e-9, 1.752, 0.0 }));
    netlist.output = "out";
    return netlist;
}

Netlist commonEmitter()
{
    Netlist netlist;
    netlist.sources.push_back ({ "W1", "in", 1e3 });
    netlist.parts = { makePart ("V1", { "+", "0" }, Supply { 15.0, 0.0 }),
                      makePart ("C1", { "in", "b" }, Capacitor { 1e-6 }),
                      makePart ("R1", { "+", "b" }, Resistor { 100e3 }),
                      makePart ("R2", { "b", "0" }, Resistor { 22e3 }),
                      makePart ("Q1", { "c", "b", "e" }, Npn { { 1e-14, 200.0, 2.0, 0.0, {} } }),
                      makePart ("RC", { "+", "c" }, Resistor { 10e3 }),
                      makePart ("RE", { "e", "0" }, Resistor { 2.2e3 }),
                      makePart ("C2", { "c", "out" }, Capacitor { 0.1e-6 }),
                      makePart ("RL", { "out", "0" }, Resistor { 100e3 }) };
    netlist.output = "out";
    return netlist;
}

void run (benchmark::State& state, const Netlist& netlist, double volts)
{
    NonlinearCircuit circuit (netlist, { netlist.output }, sampleRateHz);
    std::vector<double> input;
    for (int frame = 0; frame < frameCount; ++frame)
        input.push_back (volts * std::sin (2.0 * std::numbers::pi * 500.0 * frame / sampleRateHz));
    std::vector<double> output (input.size());
    const double* sources[] = { input.data() };
    double* outputs[] = { output.data() };
    for ([[maybe_unused]] auto _ : state)
    {
        circuit.process (sources, outputs, frameCount);
        benchmark::DoNotOptimize (output.data());
        benchmark::ClobberMemory();
    }
    state.counters["ns/sample"] = benchmark::Counter (static_cast<double> (state.iterations()) * frameCount * 1e-9,
                                                      benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
    state.counters["fallbacks"] = static_cast<double> (circuit.fallbackCount());
}

void DiodeClipperOneJunction (benchmark::State& state)
{
    run (state, clipper (1), 5.0);
}

void DiodeClipperTwoJunctions (benchmark::State& state)
{
    run (state, clipper (2), 5.0);
}

void TransistorStage (benchmark::State& state)
{
    run (state, commonEmitter(), 0.5);
}

void TransistorStageOverdriven (benchmark::State& state)
{
    run (state, commonEmitter(), 5.0);
}

BENCHMARK (DiodeClipperOneJunction);
BENCHMARK (DiodeClipperTwoJunctions);
BENCHMARK (TransistorStage);
BENCHMARK (TransistorStageOverdriven);

} // namespace

} // namespace stopwright

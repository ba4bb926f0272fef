// SPDX-License-Identifier: GPL-3.0-or-later
//
// Preamps at the internal rate and outlets at the device's. ns_per_sample is one sample of one stage; core_percent is
// what it takes of one core at that rate.
#include "Organ/Card.h"
#include "Sound/OutletStage.h"
#include "Sound/PreampChain.h"

#include <benchmark/benchmark.h>

#include <array>
#include <cmath>
#include <functional>
#include <vector>

namespace stopwright
{
namespace
{

constexpr double internalRateHz = 192000.0;
constexpr double deviceRateHz = 48000.0;
constexpr std::size_t blockSamples = 256;

void countCost (benchmark::State& state, double rateHz)
{
    const auto samples = static_cast<double> (blockSamples) * static_cast<double> (state.iterations());
    state.counters["ns_per_sample"] =
        benchmark::Counter (1e-9 * samples, benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
    state.counters["core_percent"] =
        benchmark::Counter (0.01 * samples / rateHz, benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
}

/// A 440 Hz sine of that peak, block after block, through `processor`.
template <typename Processor>
void play (benchmark::State& state, Processor& processor, double peak, double rateHz)
{
    std::vector<double> sine (static_cast<std::size_t> (rateHz / 440.0) * 64);
    for (std::size_t i = 0; i < sine.size(); ++i)
        sine[i] = peak * std::sin (2.0 * 3.14159265358979 * 440.0 / rateHz * static_cast<double> (i));
    std::array<double, blockSamples> block {};
    std::size_t place = 0;
    for (auto _ : state)
    {
        std::copy_n (sine.begin() + static_cast<std::ptrdiff_t> (place), blockSamples, block.begin());
        place = (place + blockSamples) % (sine.size() - blockSamples);
        processor.process (block);
        benchmark::DoNotOptimize (block.data());
    }
    countCost (state, rateHz);
}

Preamp preampOf (const PreampStage& stage)
{
    return { .name = "Main", .bus = "Bus", .outlet = "Outlet", .stages = { stage } };
}

/// Coupling, gain, bandwidth and rails of +-6 V; the argument is the peak in tenths of a volt before the rails.
void AmplifierStage (benchmark::State& state)
{
    PreampStage stage;
    stage.coupling = Coupling { 1e-6, 47e3 };
    stage.gain = 4.7;
    stage.gainBandwidthHz = 1e6;
    stage.rails = SupplyRails { -6.0, 6.0 };
    PreampChain chain (preampOf (stage), internalRateHz);
    play (state, chain, static_cast<double> (state.range (0)) / 10.0 / stage.gain, internalRateHz);
}

BENCHMARK (AmplifierStage)->Arg (30)->Arg (55)->Arg (190);

/// A network of one capacitor as a stage.
void CircuitStage (benchmark::State& state)
{
    Card card;
    Tap tap;
    tap.name = "In";
    tap.node = "in";
    tap.sourceOhms = 4.7e3;
    card.taps = { tap };
    card.parts = { { .name = "R1", .nodes = { "in", "out" }, .value = Resistor { 10e3 } },
                   { .name = "C1", .nodes = { "out", "0" }, .value = Capacitor { .farads = 10e-9 } } };
    card.output = "out";
    PreampStage stage;
    stage.kind = StageKind::circuit;
    const std::vector<std::reference_wrapper<const Card>> cards { std::cref (card) };
    PreampChain chain (preampOf (stage), internalRateHz, cards);
    play (state, chain, 1.0, internalRateHz);
}

BENCHMARK (CircuitStage);

/// The argument is the OutletKind.
void OutletOfKind (benchmark::State& state)
{
    Outlet outlet;
    outlet.kind = static_cast<OutletKind> (state.range (0));
    OutletStage stage (outlet, deviceRateHz);
    play (state, stage, 1.0, deviceRateHz);
}

BENCHMARK (OutletOfKind)
    ->Arg (static_cast<int> (OutletKind::main))
    ->Arg (static_cast<int> (OutletKind::tremulant))
    ->Arg (static_cast<int> (OutletKind::rotary));

} // namespace
} // namespace stopwright

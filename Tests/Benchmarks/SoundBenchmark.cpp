// SPDX-License-Identifier: GPL-3.0-or-later
//
// The live kernel: what one card costs. realtime_ratio is seconds of sound per second of one core.
#include "Organ/CardDocument.h"
#include "Sound/Decimator.h"
#include "Sound/Engine.h"

#include <benchmark/benchmark.h>

#include <array>
#include <vector>

namespace stopwright
{
namespace
{

constexpr int blockFrames = 64;

/// An engine with ten keys of the Krummhorn held down, and its attack over.
void holdTenKeys (Engine& engine, double rateHz)
{
    const Card card = readCard (std::string (STOPWRIGHT_ROOT) + "/Presets/Krummhorn8.json");
    engine.prepare ({ .deviceRateHz = rateHz, .maxFrames = blockFrames });
    engine.setCard (card, keySourceForCardAlone (card), true);
    for (const int key : { 36, 43, 48, 52, 55, 60, 64, 67, 72, 76 })
        engine.key (key, true);
}

void playBlock (Engine& engine)
{
    std::array<float, blockFrames> left {};
    std::array<float, blockFrames> right {};
    float* const channels[] = { left.data(), right.data() };
    engine.process ({}, channels, blockFrames);
    benchmark::DoNotOptimize (left.data());
}

void countRealTime (benchmark::State& state, double rateHz)
{
    state.counters["realtime_ratio"] = benchmark::Counter (
        blockFrames / rateHz * static_cast<double> (state.iterations()), benchmark::Counter::kIsRate);
}

void KrummhornTenKeys (benchmark::State& state)
{
    const auto rateHz = static_cast<double> (state.range (0));
    Engine engine;
    holdTenKeys (engine, rateHz);
    for (int block = 0; block < 1000; ++block)
        playBlock (engine);
    for (auto _ : state)
        playBlock (engine);
    countRealTime (state, rateHz);
}

BENCHMARK (KrummhornTenKeys)->Arg (48000)->Arg (44100)->Arg (96000)->Arg (192000);

/// A knob that never stands still.
void KrummhornTenKeysWhileAKnobMoves (benchmark::State& state)
{
    constexpr double rateHz = 48000.0;
    Engine engine;
    holdTenKeys (engine, rateHz);
    double ohms = 10e3;
    for (auto _ : state)
    {
        ohms = ohms > 50e3 ? 10e3 : ohms * 1.01;
        engine.turn ({ "R1", KnobKind::value }, ohms);
        playBlock (engine);
    }
    countRealTime (state, rateHz);
}

BENCHMARK (KrummhornTenKeysWhileAKnobMoves);

/// Two cards at once: a fade that never ends, since another card is always waiting.
void KrummhornTenKeysWhileFading (benchmark::State& state)
{
    constexpr double rateHz = 48000.0;
    constexpr int blocksPerFade = 40;
    const Card card = readCard (std::string (STOPWRIGHT_ROOT) + "/Presets/Krummhorn8.json");
    const KeySource keySource = keySourceForCardAlone (card);
    Engine engine;
    holdTenKeys (engine, rateHz);
    int block = 0;
    for (auto _ : state)
    {
        if (block++ % blocksPerFade == 0)
        {
            state.PauseTiming();
            engine.setCard (card, keySource, false);
            state.ResumeTiming();
        }
        playBlock (engine);
    }
    countRealTime (state, rateHz);
}

BENCHMARK (KrummhornTenKeysWhileFading);

/// The decimator alone; ns_per_frame is for one device frame.
void Decimation (benchmark::State& state)
{
    const auto rateHz = static_cast<double> (state.range (0));
    const auto factor = static_cast<int> (state.range (1));
    Decimator decimator (rateHz, factor, blockFrames);
    std::vector<double> in (static_cast<std::size_t> (blockFrames * factor), 0.5);
    std::vector<double> out (blockFrames);
    for (auto _ : state)
    {
        decimator.process (in, out);
        benchmark::DoNotOptimize (out.data());
    }
    countRealTime (state, rateHz);
    state.counters["ns_per_frame"] = benchmark::Counter (1e-9 * blockFrames * static_cast<double> (state.iterations()),
                                                         benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
}

BENCHMARK (Decimation)->Args ({ 44100, 4 })->Args ({ 48000, 4 })->Args ({ 96000, 2 })->Args ({ 48000, 15 });

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/KeyerBank.h"

#include <benchmark/benchmark.h>

#include <array>
#include <memory>
#include <string>
#include <vector>

namespace
{

using namespace stopwright;

constexpr double rateHz = 192000.0;
constexpr int blockFrames = 64 * 4;
constexpr int lowestKey = 36;
constexpr int keysHeld = 61;

/// Share of one core: time of a block against how long it lasts.
void reportCorePercent (benchmark::State& state)
{
    const double secondsOfSound = static_cast<double> (state.iterations()) * blockFrames / rateHz;
    state.counters["core_percent"] =
        benchmark::Counter (1.0e-2 * secondsOfSound, benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
}

/// Twelve generators from one clock of 2.00024 MHz and nine octaves of dividers. Divisors: usual top-octave set.
Tuning demonstrationTuning()
{
    return Tuning::topOctave (2000240.0, { 478, 451, 426, 402, 379, 358, 338, 319, 301, 284, 268, 253 }, 8, 120,
                              TopBehaviour::breakBack);
}

/// 61 keys held at each footage, every generator of the organ rendered in every block.
void allKeysHeld (benchmark::State& state, const Wave& wave)
{
    GeneratorBank bank (demonstrationTuning(), { wave }, rateHz, blockFrames);
    std::vector<std::unique_ptr<KeyerBank>> buses;
    for (const char* footage : { "16", "8", "4", "2 2/3", "2" })
    {
        buses.push_back (std::make_unique<KeyerBank> (bank, 0, Footage::parse (footage), KeyerSettings {}));
        for (int key = lowestKey; key < lowestKey + keysHeld; ++key)
            buses.back()->keyDown (key, 0);
    }

    std::array<float, blockFrames> sum {};
    const auto runBlock = [&]
    {
        bank.advance (blockFrames);
        for (int chain = 0; chain < bank.tuning().chainCount(); ++chain)
            for (int octave = 0; octave < 8; ++octave)
                benchmark::DoNotOptimize (bank.wave (0, { chain, octave }).data());

        sum.fill (0.0F);
        for (const auto& bus : buses)
            bus->mixInto (sum, 0.1F, bank);

        benchmark::DoNotOptimize (sum.data());
        benchmark::ClobberMemory();
    };

    for (int settling = 0; settling < 100; ++settling)
        runBlock();

    for (auto _ : state)
        runBlock();

    reportCorePercent (state);
}

void AllGenerators61Keys5Footages (benchmark::State& state)
{
    allKeysHeld (state, Wave {});
}

void AllStaircases61Keys5Footages (benchmark::State& state)
{
    allKeysHeld (state, Wave { .kind = WaveKind::staircase, .ranks = 4 });
}

void AllRounded61Keys5Footages (benchmark::State& state)
{
    allKeysHeld (state, Wave { .kind = WaveKind::rounded, .riseTau = 0.1, .fallTau = 0.3 });
}

void AllPulses61Keys5Footages (benchmark::State& state)
{
    allKeysHeld (state, Wave { .kind = WaveKind::pulse, .duty = 0.125 });
}

void AllTriangles61Keys5Footages (benchmark::State& state)
{
    allKeysHeld (state, Wave { .kind = WaveKind::triangle });
}

} // namespace

BENCHMARK (AllGenerators61Keys5Footages);
BENCHMARK (AllStaircases61Keys5Footages);
BENCHMARK (AllRounded61Keys5Footages);
BENCHMARK (AllPulses61Keys5Footages);
BENCHMARK (AllTriangles61Keys5Footages);

// SPDX-License-Identifier: GPL-3.0-or-later
//
// Headroom of the demonstration organ: ten notes on the stops of the document, and every key of every division with five
// stops drawn.
#include "Organ/InstrumentDocument.h"
#include "Study/HeadroomStudy.h"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

namespace stopwright
{
namespace
{

const std::filesystem::path organ = std::string (STOPWRIGHT_ROOT) + "/Presets/LarkfieldOrgan.json";

void HeadroomOfTenNotes (benchmark::State& state)
{
    const auto instrument = readInstrument (organ);
    const auto cards = instrumentCards (instrument, organ);
    HeadroomRequest request;
    for (const int key : { 36, 43, 48, 52, 55, 60, 64, 67, 72, 76 })
        request.held.push_back ({ "Upper manual", key });
    for (auto _ : state)
        benchmark::DoNotOptimize (headroomOf (instrument, cards, request));
}

void HeadroomOfAllKeys (benchmark::State& state)
{
    auto instrument = readInstrument (organ);
    const std::vector<std::string> drawn { "Diapason 8", "Principal 4", "Trumpet 8", "Stopped flute 8", "Krummhorn 8" };
    for (StopTablet& stop : instrument.stops)
        stop.drawn = std::ranges::find (drawn, stop.name) != drawn.end();
    const auto cards = instrumentCards (instrument, organ);
    const HeadroomRequest request { .held = allKeysOf (instrument) };
    for (auto _ : state)
        benchmark::DoNotOptimize (headroomOf (instrument, cards, request));
}

BENCHMARK (HeadroomOfTenNotes)->Unit (benchmark::kMillisecond);
BENCHMARK (HeadroomOfAllKeys)->Unit (benchmark::kMillisecond);

} // namespace
} // namespace stopwright

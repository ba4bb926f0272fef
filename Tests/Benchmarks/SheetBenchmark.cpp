// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/CircuitLimits.h"
#include "Organ/CardDocument.h"
#include "Sheet/SchematicDrawing.h"
#include "Sheet/SchematicLayout.h"

#include <benchmark/benchmark.h>

#include <string>

namespace
{

using namespace stopwright;

void layOutPreset (benchmark::State& state, const char* name)
{
    const auto card = readCard (std::string (STOPWRIGHT_ROOT "/Presets/") + name);
    for (auto _ : state)
        benchmark::DoNotOptimize (layOutSchematic (card));
}

void LayOutKrummhorn12Parts (benchmark::State& state)
{
    layOutPreset (state, "Krummhorn8.json");
}

void LayOutVoxHumana13Parts (benchmark::State& state)
{
    layOutPreset (state, "VoxHumana8.json");
}

std::string numbered (const char* letter, int number)
{
    return std::string (letter).append (std::to_string (number));
}

/// Sixty parts: a ladder of 24 sections with parts bridging over every third, or every node joined to some other.
Card sixtyParts (bool isTangled)
{
    Card card;
    Tap tap;
    tap.name = "Square 8";
    tap.node = "n0";
    card.taps.push_back (tap);
    constexpr int sections = 24;
    constexpr int bridges = 12;
    for (int section = 0; section < sections; ++section)
    {
        const auto to = numbered ("n", section + 1);
        const auto from = numbered ("n", isTangled ? section * 5 % (section + 1) : section);
        card.parts.push_back ({ numbered ("R", section), { from, to }, Resistor { 4.7e3 }, 0.0 });
        card.parts.push_back ({ numbered ("C", section), { to, "0" }, Capacitor { 1e-9 }, 0.0 });
    }
    for (int bridge = 0; bridge < bridges; ++bridge)
    {
        const auto from = numbered ("n", 2 * bridge);
        const auto to = numbered ("n", isTangled ? bridge * 7 % sections + 1 : 2 * bridge + 2);
        card.parts.push_back ({ numbered ("L", bridge), { from, to }, Inductor { 0.5, 90.0, 0.0 }, 0.0 });
    }
    card.output = numbered ("n", sections);
    return card;
}

void LayOutLadderOf60Parts (benchmark::State& state)
{
    const auto card = sixtyParts (false);
    for (auto _ : state)
        benchmark::DoNotOptimize (layOutSchematic (card));
}

void LayOutTangleOf60Parts (benchmark::State& state)
{
    const auto card = sixtyParts (true);
    for (auto _ : state)
        benchmark::DoNotOptimize (layOutSchematic (card));
}

/// As many resistors as a card may hold, between 64 nodes: so tangled that nodes are told by name, or a ladder in a row.
Card largestCard (bool isTangled)
{
    Card card;
    Tap tap;
    tap.name = "Square 8";
    tap.node = "n0";
    card.taps.push_back (tap);
    for (int part = 0; part < CircuitLimits::parts; ++part)
    {
        const int from = isTangled ? part * 37 % CircuitLimits::nodes : part / 2;
        const auto to = isTangled       ? numbered ("n", (from + 1 + part * part % 61) % CircuitLimits::nodes)
                        : part % 2 == 0 ? numbered ("n", from + 1)
                                        : std::string (commonNode);
        card.parts.push_back ({ numbered ("R", part), { numbered ("n", from), to }, Resistor { 4.7e3 }, 0.0 });
    }
    card.output = isTangled ? "n63" : numbered ("n", CircuitLimits::parts / 2);
    return card;
}

void LayOutLargestTangle (benchmark::State& state)
{
    const auto card = largestCard (true);
    for (auto _ : state)
        benchmark::DoNotOptimize (layOutSchematic (card));
}

void LayOutLargestLadder (benchmark::State& state)
{
    const auto card = largestCard (false);
    for (auto _ : state)
        benchmark::DoNotOptimize (layOutSchematic (card));
}

void DrawKrummhorn (benchmark::State& state)
{
    const auto card = readCard (STOPWRIGHT_ROOT "/Presets/Krummhorn8.json");
    const auto layout = layOutSchematic (card);
    for (auto _ : state)
        benchmark::DoNotOptimize (drawSchematic (card, layout));
}

} // namespace

BENCHMARK (LayOutKrummhorn12Parts)->Unit (benchmark::kMillisecond);
BENCHMARK (LayOutVoxHumana13Parts)->Unit (benchmark::kMillisecond);
BENCHMARK (LayOutLadderOf60Parts)->Unit (benchmark::kMillisecond);
BENCHMARK (LayOutTangleOf60Parts)->Unit (benchmark::kMillisecond);
BENCHMARK (LayOutLargestTangle)->Unit (benchmark::kMillisecond);
BENCHMARK (LayOutLargestLadder)->Unit (benchmark::kMillisecond);
BENCHMARK (DrawKrummhorn)->Unit (benchmark::kMillisecond);

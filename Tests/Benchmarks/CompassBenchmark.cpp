// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/CardDocument.h"
#include "Study/CompassTable.h"

#include <benchmark/benchmark.h>

#include <string>

namespace stopwright
{
namespace
{

/// A card brought to twelve parts, 61 keys, every partial to 20 kHz.
Card twelveParts()
{
    Card card = readCard (std::string (STOPWRIGHT_ROOT) + "/Presets/Krummhorn8.json");
    for (std::size_t number = 1; card.parts.size() < 12; ++number)
    {
        const std::string name = std::to_string (number);
        card.parts.push_back ({ std::string ("RX").append (name), { card.output, name }, Resistor { 220e3 }, 0.0 });
        card.parts.push_back ({ std::string ("CX").append (name), { name, "0" }, Capacitor { 1e-9 }, 0.0 });
    }
    return card;
}

void CompassOfACard (benchmark::State& state)
{
    const Card card = twelveParts();
    const KeySource keySource = keySourceForCardAlone (card);
    for (auto _ : state)
        benchmark::DoNotOptimize (compassTable (card, keySource));
    state.counters["parts"] = static_cast<double> (card.parts.size());
}

BENCHMARK (CompassOfACard)->Unit (benchmark::kMillisecond);

} // namespace
} // namespace stopwright

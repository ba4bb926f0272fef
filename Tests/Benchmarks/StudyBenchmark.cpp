// SPDX-License-Identifier: GPL-3.0-or-later
//
// Studies of a rail of 24 stops over the whole compass, from the documents read to the answer: milliseconds each, with all
// stops on one passive bus, where each loads every other, and on four.
#include "Organ/CardDocument.h"
#include "Study/HarmonicReading.h"
#include "Study/PolarityCheck.h"
#include "Study/StopEffect.h"
#include "Study/StopMatch.h"
#include "Study/TapLoad.h"

#include <benchmark/benchmark.h>

#include <array>
#include <string>
#include <vector>

namespace stopwright
{
namespace
{

constexpr std::size_t stopCount = 24;

struct Rail
{
    Instrument instrument;
    InstrumentCards cards;
};

/// The cards of Presets/ over and over, every other stop drawn, on so many passive buses with a preamp each.
Rail railOn (std::size_t buses)
{
    Rail rail;
    rail.instrument.divisions = { { "Upper", 36, 96, 1 } };
    for (std::size_t index = 0; index < buses; ++index)
    {
        MixingBus bus;
        bus.name = std::to_string (index);
        bus.kind = BusKind::passive;
        bus.loadFarads = 1e-9;
        rail.instrument.mixingBuses.push_back (bus);
        Preamp preamp { bus.name, bus.name, "Main", {} };
        preamp.stages.resize (2);
        for (auto& stage : preamp.stages)
        {
            stage.name = "Stage";
            stage.coupling = Coupling {};
            stage.gainBandwidthHz = 1e6;
        }
        rail.instrument.preamps.push_back (preamp);
    }
    const std::array<std::string, 10> presets { "Krummhorn8", "Clarinet8",     "Oboe8",   "Trumpet8",   "VoxHumana8",
                                                "Diapason8",  "StoppedFlute8", "String8", "Quint2-2-3", "FrenchHorn8" };
    for (std::size_t index = 0; index < stopCount; ++index)
    {
        StopTablet stop;
        stop.name = std::to_string (index);
        stop.division = "Upper";
        stop.bus = rail.instrument.mixingBuses[index % buses].name;
        stop.drawn = index % 2 == 0;
        rail.instrument.stops.push_back (stop);
        rail.cards.ofStops.emplace_back (
            readCard (std::string (STOPWRIGHT_ROOT) + "/Presets/" + presets[index % presets.size()] + ".json"));
    }
    rail.cards.ofStages.resize (buses);
    return rail;
}

void EffectOfAStop (benchmark::State& state)
{
    const Rail rail = railOn (static_cast<std::size_t> (state.range (0)));
    for (auto _ : state)
    {
        const RailStudy study (rail.instrument, rail.cards);
        benchmark::DoNotOptimize (changesByStop (study, 0, study.asOpened()));
        benchmark::DoNotOptimize (tapLoads (study, 0, study.asOpened()));
    }
}

/// All of what `stopwright match` prints is asked for: the compass with a resistor for each key, least squares, shifts.
void MatchOfTwoStops (benchmark::State& state)
{
    const Rail rail = railOn (static_cast<std::size_t> (state.range (0)));
    for (auto _ : state)
    {
        const RailStudy study (rail.instrument, rail.cards);
        const StopMatch match (study, 0, 8, study.asOpened());
        MatchWish wish;
        wish.keys = match.keys();
        for (const int key : wish.keys)
            benchmark::DoNotOptimize (match.findAt (key, wish));
        const double ohms = match.solve (wish);
        benchmark::DoNotOptimize (match.step (wish, ohms));
        benchmark::DoNotOptimize (match.shifts (ohms));
    }
}

void PolarityOfTwoStops (benchmark::State& state)
{
    const Rail rail = railOn (static_cast<std::size_t> (state.range (0)));
    for (auto _ : state)
    {
        const RailStudy study (rail.instrument, rail.cards);
        benchmark::DoNotOptimize (checkPolarity (study, 0, 8, compassOf (study, 0)));
    }
}

/// What the window asks again at every step of a knob: low key, so that there are most partials.
void HarmonicsOfAStop (benchmark::State& state)
{
    constexpr int key = 36;
    const Rail rail = railOn (static_cast<std::size_t> (state.range (0)));
    for (auto _ : state)
    {
        const auto point = BenchPoint::ofStop (rail.instrument, rail.cards, "0", {});
        benchmark::DoNotOptimize (harmonicReading (point, key, nullptr));
    }
}

BENCHMARK (EffectOfAStop)->ArgName ("buses")->Arg (1)->Arg (4)->Unit (benchmark::kMillisecond);
BENCHMARK (MatchOfTwoStops)->ArgName ("buses")->Arg (1)->Arg (4)->Unit (benchmark::kMillisecond);
BENCHMARK (HarmonicsOfAStop)->ArgName ("buses")->Arg (1)->Arg (4)->Unit (benchmark::kMillisecond);
BENCHMARK (PolarityOfTwoStops)->ArgName ("buses")->Arg (1)->Arg (4)->Unit (benchmark::kMillisecond);

} // namespace
} // namespace stopwright

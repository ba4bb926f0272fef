// SPDX-License-Identifier: GPL-3.0-or-later
//
// The whole rail: 61 + 61 + 30 keys held, up to 24 stops drawn on four buses, as a device at 48 kHz asks for it in blocks
// of 64 frames. core_percent is of one core, worst_block_percent of the 1.333 ms that a block has; both in processor time of
// the thread, so that what else the machine does is not counted.
#include "Organ/CardDocument.h"
#include "Sound/FlushToZero.h"
#include "Sound/InstrumentVoice.h"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <ctime>
#include <fstream>
#include <memory>
#include <string>
#include <unistd.h>
#include <vector>

namespace stopwright
{
namespace
{

constexpr double rateHz = 48000.0;
constexpr int blockFrames = 64;
constexpr int stopCount = 24;

/// Two passive buses, one with the capacitance of its loom, and two virtual earths of finite bandwidth, each with a
/// preamp of two stages with rails, to three outlets.
Instrument fourBuses()
{
    Instrument instrument;
    instrument.divisions = { { "Upper", 36, 96, 1 }, { "Lower", 36, 96, 2 }, { "Pedal", 36, 65, 3 } };
    const std::array names { "A", "B", "C", "D" };
    for (std::size_t index = 0; index < names.size(); ++index)
    {
        MixingBus bus;
        bus.name = names[index];
        bus.kind = index < 2 ? BusKind::passive : BusKind::virtualEarth;
        bus.loadFarads = index == 1 ? 1e-9 : 0.0;
        bus.gainBandwidthHz = 1e6;
        bus.rails = SupplyRails {};
        instrument.mixingBuses.push_back (bus);

        Preamp preamp { bus.name, bus.name, index == 3 ? "Rotary" : index == 2 ? "Tremulant" : "Main", {} };
        preamp.stages.resize (2);
        for (auto& stage : preamp.stages)
        {
            stage.name = "Stage";
            stage.coupling = Coupling {};
            stage.gain = -2.0;
            stage.gainBandwidthHz = 1e6;
            stage.rails = SupplyRails {};
        }
        instrument.preamps.push_back (preamp);
    }
    for (const auto kind : { OutletKind::main, OutletKind::tremulant, OutletKind::rotary })
    {
        Outlet outlet;
        outlet.name = kind == OutletKind::main ? "Main" : kind == OutletKind::tremulant ? "Tremulant" : "Rotary";
        outlet.kind = kind;
        instrument.outlets.push_back (outlet);
    }
    return instrument;
}

/// The cards of Presets/ over and over.
void addStops (Instrument& instrument, InstrumentCards& cards)
{
    const std::array<std::string, 10> presets { "Krummhorn8", "Clarinet8",     "Oboe8",   "Trumpet8",   "VoxHumana8",
                                                "Diapason8",  "StoppedFlute8", "String8", "Quint2-2-3", "FrenchHorn8" };
    for (std::size_t index = 0; index < stopCount; ++index)
    {
        StopTablet stop;
        stop.name = std::to_string (index);
        stop.division = instrument.divisions[index % instrument.divisions.size()].name;
        stop.bus = instrument.mixingBuses[index % instrument.mixingBuses.size()].name;
        instrument.stops.push_back (stop);
        cards.ofStops.emplace_back (
            readCard (std::string (STOPWRIGHT_ROOT) + "/Presets/" + presets[index % presets.size()] + ".json"));
    }
    cards.ofStages.resize (instrument.preamps.size());
}

/// Processor time of this thread.
double threadSeconds()
{
    timespec time {};
    clock_gettime (CLOCK_THREAD_CPUTIME_ID, &time);
    return static_cast<double> (time.tv_sec) + 1e-9 * static_cast<double> (time.tv_nsec);
}

/// Memory of the process that is in use now, megabytes.
double residentMegabytes()
{
    std::ifstream pages ("/proc/self/statm");
    long whole = 0;
    long resident = 0;
    pages >> whole >> resident;
    return static_cast<double> (resident) * static_cast<double> (sysconf (_SC_PAGESIZE)) / 1e6;
}

void holdAllKeys (Voice& voice)
{
    for (int key = 36; key <= 96; ++key)
        for (const int division : { 0, 1, 2 })
            voice.key (division, key, true, 0);
}

void FullRail (benchmark::State& state)
{
    auto instrument = fourBuses();
    InstrumentCards cards;
    addStops (instrument, cards);
    for (std::size_t index = 0; index < static_cast<std::size_t> (state.range (0)); ++index)
        instrument.stops[index].drawn = true;

    const FlushToZero flushToZero;
    InstrumentVoice voice (instrument, cards, { .deviceRateHz = rateHz, .maxFrames = blockFrames });
    holdAllKeys (voice);
    std::array<double, blockFrames> volts {};
    for (int block = 0; block < 2000; ++block)
        voice.renderPiece (volts);

    double seconds = 0.0;
    double worst = 0.0;
    for (auto _ : state)
    {
        const double start = threadSeconds();
        voice.renderPiece (volts);
        benchmark::DoNotOptimize (volts.data());
        const double taken = threadSeconds() - start;
        seconds += taken;
        worst = std::max (worst, taken);
    }
    const double blockSeconds = blockFrames / rateHz;
    state.counters["core_percent"] = 100.0 * seconds / (blockSeconds * static_cast<double> (state.iterations()));
    state.counters["worst_block_percent"] = 100.0 * worst / blockSeconds;
    state.counters["memory_megabytes"] = residentMegabytes();
}

/// The full rail while `moving` of its stops have their mixing resistors turned without a pause.
void FullRailWhileKnobsMove (benchmark::State& state)
{
    auto instrument = fourBuses();
    InstrumentCards cards;
    addStops (instrument, cards);
    for (auto& stop : instrument.stops)
        stop.drawn = true;
    const FlushToZero flushToZero;
    InstrumentVoice voice (instrument, cards, { .deviceRateHz = rateHz, .maxFrames = blockFrames });
    holdAllKeys (voice);
    std::array<double, blockFrames> volts {};
    bool isUp = false;
    double seconds = 0.0;
    for (auto _ : state)
    {
        isUp = ! isUp;
        for (std::size_t index = 0; index < static_cast<std::size_t> (state.range (0)); ++index)
            voice.setControl (*voice.findMixingKnob (instrument.stops[index].name), isUp ? 100e3 : 47e3);
        const double start = threadSeconds();
        voice.renderPiece (volts);
        benchmark::DoNotOptimize (volts.data());
        seconds += threadSeconds() - start;
    }
    state.counters["core_percent"] =
        100.0 * seconds * rateHz / (blockFrames * static_cast<double> (state.iterations()));
}

BENCHMARK (FullRailWhileKnobsMove)->ArgName ("moving")->Arg (0)->Arg (1)->Arg (4)->Arg (stopCount);

BENCHMARK (FullRail)->ArgName ("stops")->Arg (stopCount)->Arg (18)->Arg (12)->Arg (6)->Arg (0);

/// Least time of a block with so many stops drawn, all of one card, percent of what a block has.
class EqualStops
{
public:
    explicit EqualStops (int drawn) : instrument_ (fourBuses())
    {
        const Card card = readCard (std::string (STOPWRIGHT_ROOT) + "/Presets/Krummhorn8.json");
        addStops (instrument_, cards_);
        for (std::size_t index = 0; index < stopCount; ++index)
        {
            cards_.ofStops[index] = card;
            instrument_.stops[index].drawn = static_cast<int> (index) < drawn;
        }
        voice_ = std::make_unique<InstrumentVoice> (instrument_, cards_,
                                                    StreamSpec { .deviceRateHz = rateHz, .maxFrames = blockFrames });
    }

    void playBlock()
    {
        const double start = threadSeconds();
        voice_->renderPiece (volts_);
        benchmark::DoNotOptimize (volts_.data());
        least_ = std::min (least_, threadSeconds() - start);
    }

    double percent() const { return 100.0 * least_ * rateHz / blockFrames; }

private:
    Instrument instrument_;
    InstrumentCards cards_;
    std::unique_ptr<InstrumentVoice> voice_;
    std::array<double, blockFrames> volts_ {};
    double least_ = 1.0;
};

/// What one more stop costs, as the slope of a straight line through 0, 4 .. 24 stops of the same card without keys, and how
/// far the worst of them lies from it, percent of the whole. All of them take turns, so that they find the same machine.
void CostOfAStop (benchmark::State& state)
{
    std::vector<int> counts;
    std::vector<std::unique_ptr<EqualStops>> rails;
    for (int count = 0; count <= stopCount; count += 4)
    {
        counts.push_back (count);
        rails.push_back (std::make_unique<EqualStops> (count));
    }
    const FlushToZero flushToZero;
    for (auto _ : state)
        for (const auto& rail : rails)
            rail->playBlock();

    const auto points = static_cast<double> (counts.size());
    double meanCount = 0.0;
    double meanCost = 0.0;
    for (std::size_t index = 0; index < counts.size(); ++index)
    {
        meanCount += counts[index] / points;
        meanCost += rails[index]->percent() / points;
    }
    double products = 0.0;
    double squares = 0.0;
    for (std::size_t index = 0; index < counts.size(); ++index)
    {
        products += (counts[index] - meanCount) * (rails[index]->percent() - meanCost);
        squares += (counts[index] - meanCount) * (counts[index] - meanCount);
    }
    const double slope = products / squares;
    double worst = 0.0;
    for (std::size_t index = 0; index < counts.size(); ++index)
        worst = std::max (worst, std::abs (rails[index]->percent() - meanCost - slope * (counts[index] - meanCount)));
    state.counters["core_percent_a_stop"] = slope;
    state.counters["off_the_line_percent"] = 100.0 * worst / rails.back()->percent();
}

BENCHMARK (CostOfAStop)->MinTime (2.0);

} // namespace
} // namespace stopwright

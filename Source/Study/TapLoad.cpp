// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/TapLoad.h"

#include "Circuit/SmallSignal.h"
#include "Study/BusSurroundings.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <array>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

/// Zero when it is not stated.
double ohmsBehind (const KeyedBus& bus) noexcept
{
    if (bus.sourceOhms > 0.0 || ! bus.collectorOhms)
        return bus.sourceOhms;
    return 1.0 / (1.0 / *bus.collectorOhms + 1.0 / bus.loadOhms);
}

/// What the stop's mixing resistor is joined to.
Complex busOhmsAround (const BusSurroundings& around, double frequencyHz)
{
    const auto& bus = around.at (frequencyHz);
    return bus.felt / (bus.felt * bus.siemens + bus.amplifier);
}

/// The card with the keyed bus's own resistance before one tap, and a source behind the mixing resistor at its output.
class LoadedCard
{
public:
    LoadedCard (const Card& card, std::size_t tap, double busOhms, double mixingOhms)
        : network_ (changed (card, tap, busOhms, mixingOhms)),
          tap_ (tap),
          node_ (card.taps[tap].node),
          output_ (card.output),
          mixingOhms_ (mixingOhms)
    {}

    /// Volts of the keyed bus for each volt behind it. The load Zl at the output is the source there, set to
    /// e = Vout (1 - R / Zl): then the current is that of Zl.
    Complex left (double frequencyHz, Complex loadOhms) const
    {
        const auto atNode = network_.responses (node_, frequencyHz);
        const auto atOutput = network_.responses (output_, frequencyHz);
        const Complex share = 1.0 - mixingOhms_ / loadOhms;
        const Complex output = atOutput[tap_] / (1.0 - atOutput.back() * share);
        return atNode[tap_] + atNode.back() * share * output;
    }

private:
    static SmallSignal changed (const Card& card, std::size_t tap, double busOhms, double mixingOhms)
    {
        Netlist netlist = netlistOf (card);
        netlist.sources[tap].sourceOhms = busOhms;
        std::string name = "bus";
        while (std::ranges::any_of (netlist.sources, [&] (const SourcePort& port) { return port.name == name; })
               || std::ranges::any_of (netlist.parts, [&] (const Part& part) { return part.name == name; }))
            name += "'";
        netlist.sources.push_back ({ name, netlist.output, mixingOhms });
        return SmallSignal (netlist);
    }

    SmallSignal network_;
    std::size_t tap_;
    std::string node_;
    std::string output_;
    double mixingOhms_;
};

std::vector<std::size_t> sharersOf (const RailStudy& study, std::size_t stop, const KeyedBus& bus)
{
    std::vector<std::size_t> sharers;
    const auto& stops = study.instrument().stops;
    for (std::size_t other = 0; other < stops.size(); ++other)
        if (other != stop && study.hasCard (other) && stops[other].division == stops[stop].division
            && std::ranges::any_of (study.card (other).taps,
                                    [&bus] (const Tap& tap) { return carries (bus, tap.wave, tap.footage); }))
            sharers.push_back (other);
    return sharers;
}

/// Lowest, middle and highest key at which the footage sounds.
std::vector<std::pair<int, double>> soundingKeys (const KeySource& source, const Footage& footage)
{
    std::vector<std::pair<int, double>> all;
    for (int key = source.lowestKey; key <= source.highestKey; ++key)
        if (const auto generator = source.tuning.generatorFor (key, footage))
            all.emplace_back (key, source.tuning.frequencyHz (*generator));
    if (all.size() < 3)
        return all;
    return { all.front(), all[all.size() / 2], all.back() };
}

} // namespace

double collectorSagDb (const KeyedBus& bus, int keys) noexcept
{
    const double collector = bus.collectorOhms.value_or (0.0);
    return toDecibels ((collector + bus.loadOhms) / (collector + keys * bus.loadOhms));
}

std::vector<TapLoad> tapLoads (const RailStudy& study, std::size_t stop, const RailState& state)
{
    constexpr int tenKeys = 10;
    std::vector<TapLoad> loads;
    const Card& card = study.card (stop);
    const auto& buses = study.instrument().keyedBuses;
    std::optional<BusSurroundings> around;
    if (const auto bus = study.busOf (stop))
        around.emplace (study, *bus, state, stop);
    for (std::size_t tap = 0; tap < card.taps.size(); ++tap)
    {
        TapLoad load;
        load.tap = tap;
        const auto found = std::ranges::find_if (
            buses, [&] (const KeyedBus& bus)
            { return carries (bus, card.taps[tap].wave, card.taps[tap].footage) && ohmsBehind (bus) > 0.0; });
        if (found != buses.end())
        {
            load.keyedBus = static_cast<std::size_t> (found - buses.begin());
            load.busOhms = ohmsBehind (*found);
            load.sharers = sharersOf (study, stop, *found);
            if (found->collectorOhms)
                load.tenKeysDb = collectorSagDb (*found, tenKeys);
            const double mixingOhms = state.mixingOhms[stop];
            const LoadedCard loaded (card, tap, load.busOhms, mixingOhms);
            for (const auto& [key, hz] : soundingKeys (study.keySource (stop), found->footage))
            {
                // A stop on no bus ends in its own output: a load that is as good as none.
                constexpr double openOhms = 1e15;
                const Complex loadOhms = around ? mixingOhms + busOhmsAround (*around, hz) : Complex (openOhms);
                const Complex left = loaded.left (hz, loadOhms);
                load.atKeys.push_back ({ key, hz, load.busOhms * left / (1.0 - left), toDecibels (std::abs (left)) });
            }
        }
        loads.push_back (std::move (load));
    }
    return loads;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/InstrumentDoubts.h"

#include "Circuit/FindingWords.h"
#include "Command/CardReport.h"
#include "Units/Engineering.h"
#include "Units/Pitch.h"

#include <algorithm>

namespace stopwright
{

namespace
{

using Sentences = std::vector<std::string>;

bool isTakenBy (const KeyedBus& bus, const InstrumentCards& cards)
{
    const auto taps = [&bus] (const Tap& tap) { return carries (bus, tap.wave, tap.footage); };
    return std::ranges::any_of (cards.ofStops, [&taps] (const std::optional<Card>& card)
                                { return card && std::ranges::any_of (card->taps, taps); });
}

/// What sounds is the tap's own level behind its own resistance, so both documents must say the same.
void doubtTapLevel (const std::string& tablet, const Tap& tap, const std::vector<KeyedBus>& buses, Sentences& doubts)
{
    const auto* const bus = findKeyedBus (buses, tap.wave, tap.footage);
    if (bus == nullptr || (bus->voltsPeakToPeak == tap.voltsPeakToPeak && bus->sourceOhms == tap.sourceOhms))
        return;
    const auto words = [] (double volts, double ohms)
    {
        return formatForReading (volts, Quantity::voltage) + " peak to peak behind "
               + formatForReading (ohms, Quantity::resistance);
    };
    doubts.push_back (tablet + ": tap " + partWords (tap.name) + " is " + words (tap.voltsPeakToPeak, tap.sourceOhms)
                      + " on the card, but keyed bus " + partWords (bus->name) + " says "
                      + words (bus->voltsPeakToPeak, bus->sourceOhms)
                      + "; the card's numbers sound, so measure, and make both say the same.");
}

/// A tap goes to the first keyed bus of its wave and footage.
void doubtKeyedBus (const Instrument& instrument, std::size_t index, const InstrumentCards& cards, Sentences& doubts)
{
    const auto& buses = instrument.keyedBuses;
    const KeyedBus& bus = buses[index];
    const auto* const first = findKeyedBus (buses, bus.wave, bus.footage);
    if (first != &bus && isTakenBy (bus, cards))
        doubts.push_back ("keyed bus " + partWords (bus.name) + " has the wave and footage of keyed bus "
                          + partWords (first->name)
                          + ", which every tap of that wave takes; leave one of them out, or give it another wave.");
}

void doubtNames (const StopTablet& stop, Sentences& doubts)
{
    if (stop.name.find (',') != std::string::npos || stop.name == "all")
        doubts.push_back ("tablet " + partWords (stop.name)
                          + " cannot be named on a command line, where commas part names and \"all\" means every stop; "
                            "give it another name.");
}

/// What was noted before the work is kept, but cannot be put back where there is nothing of that name.
template <typename Item>
void doubtAsFound (const StopTablet& stop,
                   const std::optional<std::string>& asFound,
                   const std::vector<Item>& items,
                   const std::string& word,
                   Sentences& doubts)
{
    if (asFound && ! asFound->empty() && std::ranges::find (items, *asFound, &Item::name) == items.end())
        doubts.push_back (
            "tablet " + partWords (stop.name) + " was found on " + word + " " + partWords (*asFound)
            + ", which the instrument does not have, so that cannot be put back; add it, or name another in "
              "asFound.");
}

void doubtStageCount (const Instrument& instrument, Sentences& doubts)
{
    constexpr std::size_t mostLamps = 64;
    std::size_t stages = 0;
    for (const auto& preamp : instrument.preamps)
    {
        const auto bus = std::ranges::find (instrument.mixingBuses, preamp.bus, &MixingBus::name);
        const bool isStage = bus != instrument.mixingBuses.end() && bus->kind == BusKind::virtualEarth && bus->rails;
        stages += preamp.stages.size() + (isStage ? 1 : 0);
    }
    if (stages > mostLamps)
        doubts.push_back ("the preamps have " + std::to_string (stages)
                          + " stages with those of their buses; clipping is shown of the first 64 alone.");
}

bool gives (const Tap& tap)
{
    return tap.voltsPeakToPeak > 0.0;
}

/// The keys of a division for which none of the taps has a generator.
std::vector<int> silentKeys (const Card& card, const KeySource& source)
{
    std::vector<int> keys;
    for (int key = source.lowestKey; key <= source.highestKey; ++key)
        if (std::none_of (card.taps.begin(), card.taps.end(),
                          [&source, key] (const Tap& tap)
                          { return gives (tap) && source.tuning.generatorFor (key, tap.footage); }))
            keys.push_back (key);
    return keys;
}

void doubtCard (const Instrument& instrument, const StopTablet& stop, const Card& card, Sentences& doubts)
{
    const auto tablet = "tablet " + partWords (stop.name);
    for (const auto& tap : card.taps)
        if (findKeyedBus (instrument.keyedBuses, tap.wave, tap.footage) == nullptr)
            doubts.push_back (
                tablet + ": tap " + partWords (tap.name)
                + " takes a wave that no keyed bus of the instrument carries; choose a bus, or add one to "
                  "the instrument.");
        else if (gives (tap))
            doubtTapLevel (tablet, tap, instrument.keyedBuses, doubts);
    if (std::none_of (card.taps.begin(), card.taps.end(), gives))
    {
        doubts.push_back (tablet + " has no level, for its taps have 0 V peak to peak; give them a voltage.");
        return;
    }
    const auto keys = silentKeys (card, keySourceOf (instrument, stop.division, card));
    if (! keys.empty())
        doubts.push_back (tablet + ": " + counted (keys.size(), "key") + " from " + keyName (keys.front()) + " to "
                          + keyName (keys.back())
                          + " stay silent, for no generator has their pitch; tap a bus of another footage, or let the "
                            "ranks break back.");
}

void doubtStop (const Instrument& instrument,
                const StopTablet& stop,
                const std::optional<Card>& card,
                Sentences& doubts)
{
    const auto tablet = "tablet " + partWords (stop.name);
    if (stop.cardFile.empty())
        doubts.push_back (tablet
                          + (stop.drawn ? " is drawn but blank, so it gives nothing; give it a card, or retire it."
                                        : " is blank; give it a card to make it a stop."));
    else if (stop.bus.empty() && ! instrument.mixingBuses.empty())
        doubts.push_back (tablet + " is on no mixing bus, so it is silent in the organ; give it one.");
    if (card)
        doubtCard (instrument, stop, *card, doubts);
}

void doubtBus (const Instrument& instrument, const MixingBus& bus, Sentences& doubts)
{
    const auto words = "mixing bus " + partWords (bus.name);
    const auto feeds = [&bus] (const auto& thing) { return thing.bus == bus.name; };
    if (std::none_of (instrument.preamps.begin(), instrument.preamps.end(), feeds))
        doubts.push_back (words + " feeds no preamp, so its stops are silent; add a preamp that names it.");
    if (std::none_of (instrument.stops.begin(), instrument.stops.end(), feeds))
        doubts.push_back (words + " has no stops; move some to it, or leave it out.");
}

void doubtPreamp (const Preamp& preamp, Sentences& doubts)
{
    for (const auto& stage : preamp.stages)
        if (stage.kind == StageKind::amplifier && stage.gain == 0.0)
            doubts.push_back ("stage " + partWords (stage.name) + " of preamp " + partWords (preamp.name)
                              + " has a gain of 0, so nothing passes it; give it a gain.");
}

void doubtOutlet (const Instrument& instrument, const Outlet& outlet, Sentences& doubts)
{
    if (std::none_of (instrument.preamps.begin(), instrument.preamps.end(),
                      [&outlet] (const Preamp& preamp) { return preamp.outlet == outlet.name; }))
        doubts.push_back ("outlet " + partWords (outlet.name)
                          + " is fed by no preamp; lead one to it, or leave it out.");
}

} // namespace

std::vector<std::string> doubtsOf (const Instrument& instrument, const InstrumentCards& cards)
{
    Sentences doubts;
    for (std::size_t bus = 0; bus < instrument.keyedBuses.size(); ++bus)
        doubtKeyedBus (instrument, bus, cards, doubts);
    for (const auto& bus : instrument.mixingBuses)
        doubtBus (instrument, bus, doubts);
    for (const auto& preamp : instrument.preamps)
        doubtPreamp (preamp, doubts);
    for (const auto& outlet : instrument.outlets)
        doubtOutlet (instrument, outlet, doubts);
    for (std::size_t i = 0; i < instrument.stops.size(); ++i)
        doubtStop (instrument, instrument.stops[i], cards.ofStops[i], doubts);
    for (const auto& stop : instrument.stops)
    {
        doubtNames (stop, doubts);
        if (! stop.asFound)
            continue;
        doubtAsFound (stop, stop.asFound->bus, instrument.mixingBuses, "mixing bus", doubts);
        doubtAsFound (stop, stop.asFound->division, instrument.divisions, "division", doubts);
    }
    doubtStageCount (instrument, doubts);
    return doubts;
}

} // namespace stopwright

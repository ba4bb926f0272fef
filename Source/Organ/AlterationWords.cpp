// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/AlterationWords.h"

#include "Circuit/FindingWords.h"
#include "Organ/WaveWords.h"
#include "Units/Engineering.h"

#include <algorithm>

namespace stopwright
{

namespace
{

void setTexts (Alteration& alteration,
               const std::string& what,
               const std::string& asFound,
               const std::string& asAltered)
{
    alteration.what = what;
    alteration.asFound = asFound;
    alteration.asAltered = asAltered;
    alteration.words = alteration.where + ": " + what + ": " + asFound + " -> " + asAltered;
}

std::string orNone (const std::string& name, const char* none)
{
    return name.empty() ? none : name;
}

/// The keyed bus that carries it: the first with its level as well, else the first of its wave and footage.
const KeyedBus* busOf (const WaveSource& source, std::span<const KeyedBus> buses)
{
    const auto exact = std::ranges::find_if (buses, [&] (const KeyedBus& bus) { return waveSourceOf (bus) == source; });
    if (exact != buses.end())
        return &*exact;
    const auto near = std::ranges::find_if (buses, [&] (const KeyedBus& bus)
                                            { return bus.wave == source.wave && bus.footage == source.footage; });
    return near != buses.end() ? &*near : nullptr;
}

} // namespace

void describeBus (Alteration& alteration, const std::string& owner, Ends<std::string> ends)
{
    setTexts (alteration, "mixing bus", orNone (ends.asFound, "none"), orNone (ends.asAltered, "none"));
    const auto resistor = "the mixing resistor of " + owner;
    if (ends.asFound.empty())
        alteration.wayBack =
            "Take " + resistor + " off mixing bus " + partWords (ends.asAltered) + "; the stop was on none.";
    else if (ends.asAltered.empty())
        alteration.wayBack = "Put " + resistor + " back on mixing bus " + partWords (ends.asFound) + ".";
    else
        alteration.wayBack = "Take " + resistor + " off mixing bus " + partWords (ends.asAltered)
                             + " and put it back on mixing bus " + partWords (ends.asFound) + ".";
}

void describeMixing (Alteration& alteration, const std::string& owner, Ends<double> ends)
{
    const auto found = formatEngineering (ends.asFound, Quantity::resistance);
    const auto altered = formatEngineering (ends.asAltered, Quantity::resistance);
    setTexts (alteration, "mixing resistor", found, altered);
    alteration.wayBack = "Put " + found + " back in place of " + altered + " as the mixing resistor of " + owner + ".";
}

void describeRetired (Alteration& alteration, const std::string& owner, Ends<WhenRetired> ends)
{
    const auto words = [] (WhenRetired when) { return when == WhenRetired::open ? "open" : "grounded"; };
    setTexts (alteration, "when retired", words (ends.asFound), words (ends.asAltered));
    alteration.wayBack =
        ends.asFound == WhenRetired::open
            ? "Wire the contact of " + owner + " so that its mixing resistor hangs free when retired."
            : "Wire the contact of " + owner + " so that its mixing resistor goes to common when retired.";
}

void describePolarity (Alteration& alteration, const std::string& owner, Ends<int> ends)
{
    const auto words = [] (int polarity) { return polarity < 0 ? "reversed" : "normal"; };
    setTexts (alteration, "polarity", words (ends.asFound), words (ends.asAltered));
    alteration.wayBack = "Turn the polarity of " + owner + " back to " + words (ends.asFound) + ".";
}

void describeDivision (Alteration& alteration, const std::string& owner, Ends<std::string> ends)
{
    setTexts (alteration, "division", ends.asFound, ends.asAltered);
    alteration.wayBack = "Let the keys of " + partWords (ends.asFound) + " play " + owner + " again, not those of "
                         + partWords (ends.asAltered) + ".";
}

void describeCard (Alteration& alteration, const std::string& owner, Ends<std::string> ends)
{
    setTexts (alteration, "card", orNone (ends.asFound, "blank"), orNone (ends.asAltered, "blank"));
    if (ends.asFound.empty())
        alteration.wayBack =
            "Take the card " + partWords (ends.asAltered) + " out of " + owner + "; the tablet was blank.";
    else
        alteration.wayBack = "Put the card " + partWords (ends.asFound) + " back into " + owner
                             + (ends.asAltered.empty() ? "" : " in place of " + partWords (ends.asAltered)) + ".";
}

void describeSource (Alteration& alteration,
                     const std::string& owner,
                     Ends<WaveSource> ends,
                     std::span<const KeyedBus> keyedBuses)
{
    const auto text = [keyedBuses] (const WaveSource& source)
    {
        const auto* const bus = busOf (source, keyedBuses);
        return bus == nullptr ? waveWords (source) : bus->name + " (" + waveWords (source) + ")";
    };
    const auto place = [keyedBuses] (const WaveSource& source)
    {
        const auto* const bus = busOf (source, keyedBuses);
        return bus == nullptr ? "the " + waveWords (source) : "keyed bus " + partWords (bus->name);
    };
    setTexts (alteration, "keyed wave", text (ends.asFound), text (ends.asAltered));
    const auto found = place (ends.asFound);
    const auto altered = place (ends.asAltered);
    alteration.wayBack = found == altered
                             ? "Bring " + owner + " back to what " + found + " gave: " + waveWords (ends.asFound) + "."
                             : "Take " + owner + " off " + altered + " and put it back on " + found + ".";
}

void describeNode (Alteration& alteration, const std::string& owner, Ends<std::string> ends)
{
    setTexts (alteration, "node", ends.asFound, ends.asAltered);
    alteration.wayBack = "Take the lead of " + owner + " off " + nodeWords (ends.asAltered) + " and back to "
                         + nodeWords (ends.asFound) + ".";
}

} // namespace stopwright

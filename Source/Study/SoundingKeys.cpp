// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/SoundingKeys.h"

#include "Units/Error.h"
#include "Units/Pitch.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <cstddef>
#include <set>

namespace stopwright
{

namespace
{

constexpr int semitonesPerOctave = 12;

std::size_t divisionIndex (const Instrument& instrument, const std::string& name)
{
    std::string names;
    for (std::size_t index = 0; index < instrument.divisions.size(); ++index)
    {
        if (instrument.divisions[index].name == name)
            return index;
        names += (names.empty() ? "" : ", ") + quotedText (instrument.divisions[index].name);
    }
    throw Error ("There is no division " + quotedText (name) + " in this instrument; it has: " + names + ".");
}

bool hasKey (const Division& division, int key)
{
    return key >= division.lowestKey && key <= division.highestKey;
}

void requireKey (const Division& division, int key)
{
    if (! hasKey (division, key))
        throw Error ("The key " + keyName (key) + " is not on " + quotedText (division.name) + ", which goes from "
                     + keyName (division.lowestKey) + " to " + keyName (division.highestKey)
                     + "; choose a key within.");
}

double sagOf (const Instrument& instrument, const Tap& tap, std::size_t keyCount)
{
    const auto* const bus = findKeyedBus (instrument.keyedBuses, tap.wave, tap.footage);
    if (bus == nullptr || ! bus->collectorOhms)
        return 1.0;
    const auto count = static_cast<double> (std::max<std::size_t> (1, keyCount));
    return (*bus->collectorOhms + bus->loadOhms) / (*bus->collectorOhms + count * bus->loadOhms);
}

} // namespace

std::vector<std::vector<int>> soundingKeys (const Instrument& instrument, const std::vector<HeldKey>& held)
{
    std::vector<std::set<int>> sounding (instrument.divisions.size());
    for (const HeldKey& one : held)
    {
        const auto own = divisionIndex (instrument, one.division);
        requireKey (instrument.divisions[own], one.key);
        sounding[own].insert (one.key);
        for (const Coupler& coupler : instrument.couplers)
        {
            if (! coupler.drawn || coupler.from != one.division)
                continue;
            const auto to = divisionIndex (instrument, coupler.to);
            const int key = one.key + semitonesPerOctave * coupler.octaves;
            if (hasKey (instrument.divisions[to], key))
                sounding[to].insert (key);
        }
    }
    std::vector<std::vector<int>> keys;
    keys.reserve (sounding.size());
    for (const auto& ofDivision : sounding)
        keys.emplace_back (ofDivision.begin(), ofDivision.end());
    return keys;
}

std::vector<HeldKey> allKeysOf (const Instrument& instrument, const std::string& division)
{
    if (! division.empty())
        divisionIndex (instrument, division);
    std::vector<HeldKey> held;
    for (const Division& keyboard : instrument.divisions)
        if (division.empty() || keyboard.name == division)
            for (int key = keyboard.lowestKey; key <= keyboard.highestKey; ++key)
                held.push_back ({ keyboard.name, key });
    return held;
}

InstrumentCards
    sagged (InstrumentCards cards, const Instrument& instrument, const std::vector<std::vector<int>>& soundingKeys)
{
    for (std::size_t stop = 0; stop < cards.ofStops.size(); ++stop)
    {
        if (! cards.ofStops[stop])
            continue;
        const auto division = divisionIndex (instrument, instrument.stops[stop].division);
        for (Tap& tap : cards.ofStops[stop]->taps)
            tap.voltsPeakToPeak *= sagOf (instrument, tap, soundingKeys[division].size());
    }
    return cards;
}

} // namespace stopwright

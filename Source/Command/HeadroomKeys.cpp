// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/HeadroomKeys.h"

#include "Units/Error.h"
#include "Units/Pitch.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <numeric>
#include <set>

namespace stopwright
{

namespace
{

bool isPlayedFrom (const Instrument& instrument, const Division& division)
{
    return std::ranges::any_of (
        instrument.stops, [&] (const StopTablet& stop)
        { return stop.drawn && ! stop.cardFile.empty() && ! stop.bus.empty() && stop.division == division.name; });
}

bool hasKey (const Division& division, int key)
{
    return key >= division.lowestKey && key <= division.highestKey;
}

std::vector<int> wholeOf (const Division& division)
{
    std::vector<int> keys (static_cast<std::size_t> (division.highestKey - division.lowestKey + 1));
    std::iota (keys.begin(), keys.end(), division.lowestKey);
    return keys;
}

HeldDivision heldOn (const Division& division, const KeyWish& wish)
{
    if (wish.allKeys)
        return { division.name, wholeOf (division), {}, false, true };
    HeldDivision held;
    held.name = division.name;
    const auto& chord = wish.chord.empty() ? usualChord() : wish.chord;
    for (const int key : std::set<int> (chord.begin(), chord.end()))
        (hasKey (division, key) ? held.keys : held.leftAway).push_back (key);
    if (held.keys.empty() && wish.chord.empty())
        return { division.name, wholeOf (division), {}, true, false };
    return held;
}

std::vector<Division> chosenDivisions (const Instrument& instrument, const std::string& name)
{
    std::vector<Division> chosen;
    for (const Division& division : instrument.divisions)
        if (name.empty() ? isPlayedFrom (instrument, division) : division.name == name)
            chosen.push_back (division);
    if (chosen.empty() && ! name.empty())
        allKeysOf (instrument, name); // says which there are
    return chosen;
}

void requireTyped (const std::vector<Division>& divisions, const std::vector<int>& chord)
{
    std::string compasses;
    for (const Division& division : divisions)
        compasses += (compasses.empty() ? "" : ", nor on ") + quotedText (division.name) + ", which goes from "
                     + keyName (division.lowestKey) + " to " + keyName (division.highestKey);
    for (const int key : chord)
        if (! divisions.empty()
            && std::ranges::none_of (divisions, [key] (const auto& division) { return hasKey (division, key); }))
            throw Error ("The key " + keyName (key) + " is not on " + compasses + "; choose a key within.");
}

} // namespace

const std::vector<int>& usualChord()
{
    static const std::vector<int> chord { 36, 43, 48, 52, 55, 60, 64, 67, 72, 76 };
    return chord;
}

std::vector<HeldDivision> heldDivisions (const Instrument& instrument, const KeyWish& wish)
{
    const auto divisions = chosenDivisions (instrument, wish.division);
    requireTyped (divisions, wish.chord);
    std::vector<HeldDivision> held;
    held.reserve (divisions.size());
    for (const Division& division : divisions)
        held.push_back (heldOn (division, wish));
    return held;
}

std::vector<HeldKey> keysOf (const std::vector<HeldDivision>& divisions)
{
    std::vector<HeldKey> held;
    for (const HeldDivision& division : divisions)
        for (const int key : division.keys)
            held.push_back ({ division.name, key });
    return held;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/DivisionFields.h"

#include "Circuit/FindingWords.h"
#include "Organ/ListFields.h"
#include "Organ/TuningFields.h"
#include "Units/Pitch.h"
#include "Units/QuotedText.h"

#include <algorithm>

namespace stopwright
{

namespace
{

void readChannel (FieldReader& fields, const std::vector<Division>& earlier, Division& division)
{
    constexpr int highestChannel = 16;
    if (! fields.has ("midiChannel"))
        return;
    division.midiChannel = fields.whole ("midiChannel", 1, highestChannel);
    const auto other = std::find_if (earlier.begin(), earlier.end(),
                                     [&division] (const Division& d) { return d.midiChannel == division.midiChannel; });
    if (other != earlier.end())
        fields.refuse ("midiChannel", "channel " + std::to_string (*division.midiChannel) + " is taken by division "
                                          + partWords (other->name) + "; give each division a channel of its own.");
}

} // namespace

Division readDivision (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& /*unknown*/)
{
    Division division;
    division.name = fields.name ("name");
    fields.setLabel ("division " + partWords (division.name));
    requireFreshName (fields, "name", instrument.divisions, division.name);
    division.lowestKey = readKey (fields, "lowestKey");
    division.highestKey = readKey (fields, "highestKey");
    if (division.lowestKey > division.highestKey)
        fields.refuse ("highestKey", "the highest key " + keyName (division.highestKey) + " lies below the lowest, "
                                         + keyName (division.lowestKey) + ".");
    readChannel (fields, instrument.divisions, division);
    return division;
}

JsonTree divisionTree (const Division& division, UnknownFieldSource& /*unknown*/)
{
    JsonTree tree;
    tree["name"] = division.name;
    tree["lowestKey"] = keyName (division.lowestKey);
    tree["highestKey"] = keyName (division.highestKey);
    if (division.midiChannel)
        tree["midiChannel"] = *division.midiChannel;
    return tree;
}

Coupler readCoupler (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& /*unknown*/)
{
    Coupler coupler;
    coupler.name = fields.name ("tablet");
    fields.setLabel ("coupler " + partWords (coupler.name));
    requireFreshName (fields, "tablet", instrument.couplers, coupler.name);
    coupler.from = fields.name ("from");
    requireKnownName (fields, "from", instrument.divisions, coupler.from, "division", "divisions");
    coupler.to = fields.name ("to");
    requireKnownName (fields, "to", instrument.divisions, coupler.to, "division", "divisions");
    coupler.octaves = fields.whole ("octaves", -1, 1, coupler.octaves);
    if (coupler.from == coupler.to && coupler.octaves == 0)
        fields.refuse ({}, "it couples division " + partWords (coupler.to)
                               + " to itself at the same pitch, which does nothing; name another division, or give "
                                 "1 or -1 octaves.");
    coupler.drawn = fields.flag ("drawn", coupler.drawn);
    return coupler;
}

JsonTree couplerTree (const Coupler& coupler, UnknownFieldSource& /*unknown*/)
{
    JsonTree tree;
    tree["tablet"] = coupler.name;
    tree["from"] = coupler.from;
    tree["to"] = coupler.to;
    if (coupler.octaves != 0)
        tree["octaves"] = coupler.octaves;
    if (coupler.drawn)
        tree["drawn"] = true;
    return tree;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/StopFields.h"

#include "Circuit/FindingWords.h"
#include "Organ/AsFoundFields.h"
#include "Organ/ListFields.h"

#include <array>

namespace stopwright
{

namespace
{

/// In the order of WhenRetired.
constexpr std::array<std::string_view, 2> retiredWords { "open", "grounded" };

} // namespace

WhenRetired readRetired (FieldReader& fields, WhenRetired fallback)
{
    return static_cast<WhenRetired> (fields.choice ("whenRetired", retiredWords, static_cast<std::size_t> (fallback)));
}

std::string_view retiredWord (WhenRetired whenRetired) noexcept
{
    return retiredWords[static_cast<std::size_t> (whenRetired)];
}

StopTablet readStop (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& unknown)
{
    StopTablet stop;
    stop.name = fields.name ("tablet");
    fields.setLabel ("stop " + partWords (stop.name));
    requireFreshName (fields, "tablet", instrument.stops, stop.name);
    if (hasName (instrument.couplers, stop.name))
        fields.refuse ("tablet", "a coupler has this name; give each tablet a name of its own.");
    stop.division = fields.name ("division");
    requireKnownName (fields, "division", instrument.divisions, stop.division, "division", "divisions");
    stop.cardFile = readCardFile (fields, "card");
    stop.proposed = fields.flag ("proposed", stop.proposed);
    if (fields.has ("bus"))
    {
        stop.bus = fields.name ("bus");
        requireKnownName (fields, "bus", instrument.mixingBuses, stop.bus, "mixing bus", "mixing buses");
    }
    stop.mixingOhms = fields.quantity ("mixingOhms", mixingRange, stop.mixingOhms);
    stop.polarity = readPolarity (fields);
    stop.whenRetired = readRetired (fields, stop.whenRetired);
    stop.drawn = fields.flag ("drawn", stop.drawn);
    stop.asFound = readStopAsFound (fields, stop.name, unknown);
    return stop;
}

JsonTree stopTree (const StopTablet& stop, UnknownFieldSource& unknown)
{
    const StopTablet usual;
    JsonTree tree;
    tree["tablet"] = stop.name;
    tree["division"] = stop.division;
    if (! stop.cardFile.empty())
        tree["card"] = stop.cardFile;
    if (stop.proposed)
        tree["proposed"] = true;
    if (! stop.bus.empty())
        tree["bus"] = stop.bus;
    if (! stop.bus.empty() || stop.mixingOhms != usual.mixingOhms)
        tree["mixingOhms"] = quantityTree (stop.mixingOhms, Quantity::resistance);
    if (stop.polarity != usual.polarity)
        tree["polarity"] = stop.polarity;
    if (! stop.bus.empty() || stop.whenRetired != usual.whenRetired)
        tree["whenRetired"] = retiredWord (stop.whenRetired);
    if (stop.drawn)
        tree["drawn"] = true;
    writeAsFound (stop.asFound, stop.name, tree, unknown);
    return tree;
}

} // namespace stopwright

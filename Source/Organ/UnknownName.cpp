// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/UnknownName.h"

#include "Circuit/FindingWords.h"
#include "Organ/Spelling.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <vector>

namespace stopwright
{

namespace
{

/// "it has A, B and C", or that there are none.
std::string thoseThereAre (std::string_view what, std::span<const std::string_view> names)
{
    if (names.empty())
        return std::string ("it has no ").append (what).append ("s yet, so add one to its document first.");
    std::vector<std::string> shown;
    shown.reserve (names.size());
    for (const auto name : names)
        shown.push_back (partWords (name));
    const std::vector<std::string_view> views (shown.begin(), shown.end());
    return "it has " + listedWords (views, "and") + ".";
}

} // namespace

std::string unknownNameWords (std::string_view what, std::string_view name, std::span<const std::string_view> names)
{
    const auto start = std::string ("There is no ")
                           .append (what)
                           .append (" ")
                           .append (quotedText (name))
                           .append (" in the instrument");
    if (const auto closest = closestWord (name, names))
        return start + "; did you mean " + quotedText (*closest) + "? " + capitalised (thoseThereAre (what, names));
    return start + "; " + thoseThereAre (what, names);
}

void refuseStop (const Instrument& instrument, std::string_view name)
{
    if (const auto stop = std::ranges::find (instrument.stops, name, &StopTablet::name);
        stop != instrument.stops.end() && stop->cardFile.empty())
        throw Error ("The tablet " + partWords (name)
                     + " is blank: it names no card, so it has no tone; give it a card in the instrument.");
    std::vector<std::string_view> names;
    names.reserve (instrument.stops.size());
    for (const auto& stop : instrument.stops)
        if (! stop.cardFile.empty())
            names.emplace_back (stop.name);
    if (std::ranges::find (instrument.couplers, name, &Coupler::name) != instrument.couplers.end())
        throw Error (quotedText (name) + " is a coupler, which has no tone of its own; name a stop of the instrument: "
                     + thoseThereAre ("stop", names));
    throw Error (unknownNameWords ("stop", name, names));
}

} // namespace stopwright

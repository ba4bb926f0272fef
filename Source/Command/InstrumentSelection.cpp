// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/InstrumentSelection.h"

#include "Circuit/FindingWords.h"
#include "Command/CardSelection.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/UnknownName.h"
#include "Units/Error.h"

#include <algorithm>
#include <string_view>
#include <utility>

namespace stopwright
{

namespace
{

template <typename Item>
std::vector<std::string_view> namesOf (const std::vector<Item>& items)
{
    std::vector<std::string_view> names;
    names.reserve (items.size());
    for (const auto& item : items)
        names.emplace_back (item.name);
    return names;
}

std::vector<std::string_view> tabletsOf (const Instrument& instrument)
{
    auto names = namesOf (instrument.stops);
    const auto couplers = namesOf (instrument.couplers);
    names.insert (names.end(), couplers.begin(), couplers.end());
    return names;
}

bool isOnABus (const Instrument& instrument, const StopTablet& stop)
{
    return instrument.mixingBuses.empty() || ! stop.bus.empty();
}

bool isAll (const Instrument& instrument, const std::vector<std::string>& tablets)
{
    const auto names = tabletsOf (instrument);
    return tablets.size() == 1 && tablets.front() == "all" && std::ranges::find (names, "all") == names.end();
}

/// Whether a stop is drawn and can be heard.
bool sounds (const Instrument& instrument, const StopTablet& stop)
{
    return stop.drawn && ! stop.cardFile.empty() && isOnABus (instrument, stop);
}

void requireSound (const Instrument& instrument)
{
    if (std::ranges::none_of (instrument.stops, [&] (const auto& stop) { return sounds (instrument, stop); }))
        throw Error ("No stop is drawn, so nothing would sound; name the stops to draw, as in --stops \"Diapason 8, "
                     "Oboe 8\".");
}

} // namespace

void drawOnly (Instrument& instrument, const std::vector<std::string>& tablets)
{
    for (auto& stop : instrument.stops)
        stop.drawn = false;
    for (auto& coupler : instrument.couplers)
        coupler.drawn = false;
    if (isAll (instrument, tablets))
    {
        for (auto& stop : instrument.stops)
            stop.drawn = ! stop.cardFile.empty() && isOnABus (instrument, stop);
        return;
    }
    for (const auto& name : tablets)
    {
        const auto stop = std::ranges::find (instrument.stops, name, &StopTablet::name);
        const auto coupler = std::ranges::find (instrument.couplers, name, &Coupler::name);
        if (coupler != instrument.couplers.end())
            coupler->drawn = true;
        else if (stop == instrument.stops.end())
            throw Error (unknownNameWords ("tablet", name, tabletsOf (instrument)));
        else if (stop->cardFile.empty())
            refuseStop (instrument, name);
        else if (! isOnABus (instrument, *stop))
            throw Error ("The tablet " + partWords (name)
                         + " is on no mixing bus, so it cannot be heard; give it a bus in the instrument.");
        else
            stop->drawn = true;
    }
}

SelectedInstrument selectInstrument (const std::filesystem::path& file, const std::vector<std::string>& tablets)
{
    auto instrument = readInstrument (file);
    try
    {
        if (! tablets.empty())
            drawOnly (instrument, tablets);
        requireSound (instrument);
    }
    catch (const Error& fault)
    {
        throw DocumentError (file.string(), {}, fault.what());
    }
    auto cards = instrumentCards (instrument, file);
    for (std::size_t index = 0; index < instrument.stops.size(); ++index)
        if (const auto& card = cards.ofStops[index])
            requireSoundCard (*card, cardPath (file, instrument.stops[index].cardFile));
    return { std::move (instrument), std::move (cards) };
}

std::vector<std::string> drawnTablets (const SelectedInstrument& selected)
{
    std::vector<std::string> names;
    for (const auto& stop : selected.instrument.stops)
        if (sounds (selected.instrument, stop))
            names.push_back (stop.name);
    for (const auto& coupler : selected.instrument.couplers)
        if (coupler.drawn)
            names.push_back (coupler.name);
    return names;
}

PhraseKeyboards keyboardsOf (const SelectedInstrument& selected, const std::string& division)
{
    const auto& instrument = selected.instrument;
    const auto drawn =
        std::ranges::find_if (instrument.stops, [&] (const auto& stop) { return sounds (instrument, stop); });
    const auto& name = division.empty() && drawn != instrument.stops.end() ? drawn->division : division;
    const auto found = std::ranges::find (instrument.divisions, name, &Division::name);
    if (found == instrument.divisions.end())
        throw Error (unknownNameWords ("division", name, namesOf (instrument.divisions)));
    return { channelsOf (instrument), Keyboard::ofDivision (static_cast<int> (found - instrument.divisions.begin())),
             Compass { found->lowestKey, found->highestKey } };
}

} // namespace stopwright

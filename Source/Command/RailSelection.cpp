// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/RailSelection.h"

#include "Organ/InstrumentDocument.h"
#include "Organ/PlainText.h"
#include "Units/CsvCell.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <utility>

namespace stopwright
{

void RailSelection::declare (CLI::App& app)
{
    app.add_option ("INSTRUMENT", file_, "The document of the instrument")->required()->type_name ("FILE");
}

RailStudy RailSelection::load() const
{
    return readRail (file_);
}

RailStudy readRail (const std::filesystem::path& file)
{
    auto instrument = readInstrument (file);
    auto cards = instrumentCards (instrument, file);
    return { std::move (instrument), std::move (cards) };
}

std::vector<std::size_t> stopsOfOneDivision (const RailStudy& study, const std::vector<std::string>& names)
{
    const auto& tablets = study.instrument().stops;
    auto stops = stopsNamed (study, names);
    for (std::size_t stop = 0; names.empty() && stop < tablets.size(); ++stop)
        if (tablets[stop].drawn && study.hasCard (stop)
            && (stops.empty() || tablets[stop].division == tablets[stops.front()].division))
            stops.push_back (stop);
    for (const std::size_t stop : stops)
        requireHeard (study, stop);
    if (stops.empty()
        && std::ranges::all_of (tablets, [] (const StopTablet& tablet) { return tablet.cardFile.empty(); }))
        throw Error ("The instrument has no stops yet; give a tablet of it a card first.");
    if (stops.empty())
        throw Error ("No stop is drawn when this instrument is opened; name one with --stop.");
    for (const std::size_t stop : stops)
        if (tablets[stop].division != tablets[stops.front()].division)
            throw Error ("The stops " + quotedText (tablets[stops.front()].name) + " and "
                         + quotedText (tablets[stop].name)
                         + " are of two divisions, so no key sounds both; name stops of one division.");
    return stops;
}

void requireHeard (const RailStudy& study, std::size_t stop)
{
    const StopTablet& tablet = study.instrument().stops[stop];
    const auto bus = study.busOf (stop);
    if (! bus && ! study.instrument().mixingBuses.empty())
        throw Error ("The tablet " + quotedText (tablet.name)
                     + " is on no mixing bus, so it cannot be heard; give it a bus in the instrument.");
    if (bus && ! study.preampOf (*bus))
        throw Error ("The mixing bus " + quotedText (tablet.bus) + " of the tablet " + quotedText (tablet.name)
                     + " feeds no preamp, so the stop cannot be heard; add a preamp that names it.");
}

std::size_t stopNamed (const RailStudy& study, const std::string& name)
{
    const auto stop = study.findStop (name);
    requireHeard (study, stop);
    return stop;
}

std::vector<std::size_t> stopsNamed (const RailStudy& study, const std::vector<std::string>& names)
{
    std::vector<std::size_t> stops;
    stops.reserve (names.size());
    for (const auto& name : names)
    {
        const auto stop = stopNamed (study, name);
        if (std::ranges::find (stops, stop) == stops.end())
            stops.push_back (stop);
    }
    return stops;
}

RailState stateWith (const RailStudy& study, const std::vector<std::string>& drawn)
{
    return drawn.empty() ? study.asOpened() : study.withDrawn (stopsNamed (study, drawn));
}

std::string stopName (const RailStudy& study, std::size_t stop)
{
    return printable (study.instrument().stops[stop].name);
}

std::string csvStopName (const RailStudy& study, std::size_t stop)
{
    return csvCell (study.instrument().stops[stop].name);
}

} // namespace stopwright

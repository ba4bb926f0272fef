// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/RailSelection.h"

#include "Organ/InstrumentDocument.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <utility>

namespace stopwright
{

void RailSelection::declare (CLI::App& app)
{
    app.add_option ("INSTRUMENT", file_, "The document of the instrument")->required();
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
    if (stops.empty())
        throw Error ("No stop is drawn when this instrument is opened; name one with --stop.");
    for (const std::size_t stop : stops)
        if (tablets[stop].division != tablets[stops.front()].division)
            throw Error ("The stops " + quotedText (tablets[stops.front()].name) + " and "
                         + quotedText (tablets[stop].name)
                         + " are of two divisions, so no key sounds both; name stops of one division.");
    return stops;
}

std::vector<std::size_t> stopsNamed (const RailStudy& study, const std::vector<std::string>& names)
{
    std::vector<std::size_t> stops;
    stops.reserve (names.size());
    for (const auto& name : names)
        stops.push_back (study.findStop (name));
    return stops;
}

} // namespace stopwright

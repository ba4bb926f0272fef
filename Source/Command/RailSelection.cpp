// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/RailSelection.h"

#include "Organ/InstrumentDocument.h"
#include "Organ/PlainText.h"

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
    auto instrument = readInstrument (file_);
    auto cards = instrumentCards (instrument, file_);
    return { std::move (instrument), std::move (cards) };
}

std::vector<std::size_t> stopsNamed (const RailStudy& study, const std::vector<std::string>& names)
{
    std::vector<std::size_t> stops;
    stops.reserve (names.size());
    for (const auto& name : names)
        stops.push_back (study.findStop (name));
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
    std::string text = "\"";
    for (const char letter : stopName (study, stop))
        text.append (letter == '"' ? 2 : 1, letter);
    return text + '"';
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/RailSelection.h"

#include "Organ/InstrumentDocument.h"

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

} // namespace stopwright

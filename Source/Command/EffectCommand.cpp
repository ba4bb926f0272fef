// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/EffectCommand.h"

#include "Command/EffectReport.h"
#include "Command/Options.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <ostream>

namespace stopwright
{

namespace
{

constexpr const char* footer =
    "Every other stop is drawn alone among the rail as it is opened, with the stop in it and against the rail without it\n"
    "at all: the change of its rms volts over its whole compass, and its largest change at any key. A tap is weighed with\n"
    "nothing else on its keyed bus, which is the most it can cost; taps are counted from 1 in the card's order.\n"
    "CSV header, --list stops: stop,same_bus,drawn_db,drawn_largest_db,drawn_largest_key,open_db,open_largest_db,"
    "open_largest_key,grounded_db,grounded_largest_db,grounded_largest_key,over_limit\n"
    "CSV header, --list taps: tap,behind_ohm,key,frequency_hz,input_re_ohm,input_im_ohm,bus_db,over_limit\n"
    "Examples:\n"
    "  stopwright effect Presets/LarkfieldOrgan.json --stop \"Krummhorn 8\"\n"
    "  stopwright effect Presets/LarkfieldOrgan.json --stop \"Krummhorn 8\" --limit 0.2 --list taps --csv";

} // namespace

void EffectCommand::declare (CLI::App& program)
{
    constexpr QuantityRange limitRange { Quantity::number, 0.0, 120.0, "dB" };
    auto* const app = program.add_subcommand (name(), "What adding a stop does to every other one");
    selection_.declare (*app);
    addName (*app, "--stop", stop_, "The stop that is added")->required();
    addQuantity (*app, "--limit", limitRange, limitDb_, "Warn of changes above this (default 0.5, common practice)")
        ->type_name ("DB");
    addNames (*app, "--drawn", drawn_, "Draw these stops instead of those the document says are");
    auto* const list =
        addChoice (*app, "--list", { "stops", "taps" }, list_, "What CSV lists: stops (default) or taps");
    list->needs (app->add_flag ("--csv", csv_, "Print CSV instead of tables"));
    app->footer (footer);
}

ExitStatus EffectCommand::run (std::ostream& out, std::ostream& /*err*/)
{
    const RailStudy study = selection_.load();
    const EffectReport report (study, stopNamed (study, stop_), stateWith (study, drawn_), limitDb_);
    if (! csv_)
        report.printTables (out);
    else if (list_ == 0)
        report.csvStops (out);
    else
        report.csvTaps (out);
    return ExitStatus::success;
}

} // namespace stopwright

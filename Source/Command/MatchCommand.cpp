// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/MatchCommand.h"

#include "Command/MatchReport.h"
#include "Command/Options.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <array>
#include <ostream>

namespace stopwright
{

namespace
{

constexpr const char* footer =
    "Each stop is drawn alone among the rail as it is opened; dBV rms and A-weighted of all partials to 20 kHz, behind the\n"
    "preamp. The resistor is solved on the networks: on a passive bus it loads the others, and it may load its own\n"
    "network. --against finished takes the reference as it will be with the new resistor in, today as it is now; a stop\n"
    "matched to itself is matched to what it gives today. Offered is what is sold, 10 ohm to 10 Mohm (common practice, no\n"
    "source); where no such resistor gives the wish at a key or in an octave, why_none says too soft (even the smallest\n"
    "leaves the stop below the wish), too loud (even the largest leaves it above) or silent (one of both has no generator).\n"
    "CSV header, --list compass: key,stop_dbv,reference_dbv,step_db,stop_dbva,reference_dbva,step_dba,key_ohm,why_none\n"
    "CSV header, --list resistors: choice,ohm,first_ohm,second_ohm,step_db,error_db,rms_off_wish_db\n"
    "CSV header, --list octaves: lowest_key,highest_key,ohm,why_none\n"
    "CSV header, --list others: stop,re_now_db,re_now_largest_db,re_without_db,re_without_largest_db\n"
    "Examples:\n"
    "  stopwright match Presets/LarkfieldOrgan.json --stop \"Krummhorn 8\" --to \"Stopped flute 8\"\n"
    "  stopwright match Presets/LarkfieldOrgan.json --stop \"Krummhorn 8\" --to \"Oboe 8\" --offset -3 --measure A "
    "--have 47k,82k,100k,220k\n"
    "  stopwright match Presets/LarkfieldOrgan.json --stop \"Oboe 8\" --to \"String 8\" --at C4 --list resistors --csv";

constexpr std::array seriesOf { Series::e6, Series::e12, Series::e24, Series::e48, Series::e96 };

const std::vector<std::string>& seriesWords()
{
    static const std::vector<std::string> words { "E6", "E12", "E24", "E48", "E96" };
    return words;
}

enum class List
{
    compass,
    resistors,
    octaves,
    others
};

} // namespace

void MatchCommand::declare (CLI::App& program)
{
    constexpr QuantityRange offsetRange { Quantity::number, -120.0, 120.0, "dB" };
    constexpr QuantityRange partRange { Quantity::resistance, 1.0, 1e9, "ohm" };
    auto* const app = program.add_subcommand (
        name(), "Two stops beside each other, and the mixing resistor for the wanted step between them");
    selection_.declare (*app);
    addName (*app, "--stop", stop_, "The stop whose mixing resistor is looked for")->required();
    addName (*app, "--to", reference_, "The stop it is matched to")->required();
    addQuantity (*app, "--offset", offsetRange, offsetDb_, "The wanted step, dB re the other stop (default 0)")
        ->type_name ("DB");
    addChoice (*app, "--measure", { "rms", "A" }, measure_, "Match by rms volts (default), or A-weighted: rms or A");
    addChoice (*app, "--against", { "finished", "today" }, against_,
               "The other stop with the new resistor in (default) or as it is now: finished or today");
    auto* const keys = addKeys (*app, "--keys", keys_, "Match over these keys (default: all both have)");
    addKey (*app, "--at", at_, "Match at this key alone")->excludes (keys);
    addChoice (*app, "--series", seriesWords(), series_, "Round to E6, E12, E24 (default), E48 or E96");
    addQuantities (*app, "--have", partRange, stock_,
                   "Resistors in hand: the best one, two in series, two in parallel");
    addNames (*app, "--drawn", drawn_, "Draw these stops instead of those the document says are");
    auto* const list = addChoice (*app, "--list", { "compass", "resistors", "octaves", "others" }, list_,
                                  "What CSV lists: compass (default), resistors, octaves or others");
    list->needs (app->add_flag ("--csv", csv_, "Print CSV instead of tables"));
    app->footer (footer);
}

ExitStatus MatchCommand::run (std::ostream& out, std::ostream& /*err*/)
{
    const RailStudy study = selection_.load();
    MatchWish wish;
    wish.offsetDb = offsetDb_;
    wish.measure = measure_ == 0 ? LevelMeasure::rms : LevelMeasure::aWeighted;
    wish.against = against_ == 0 ? MatchAgainst::finished : MatchAgainst::today;
    wish.keys = keys_;
    if (at_ >= 0)
        wish.keys = { at_ };
    const MatchReport report (study, stopNamed (study, stop_), stopNamed (study, reference_), stateWith (study, drawn_),
                              wish);
    const auto series = static_cast<std::size_t> (series_);
    const auto resistors = report.resistors (seriesOf[series], seriesWords()[series], stock_);
    const auto list = static_cast<List> (list_);
    if (! csv_)
    {
        report.printCompass (out);
        report.printTables (resistors, out);
    }
    else if (list == List::compass)
        report.csvCompass (out);
    else if (list == List::resistors)
        MatchReport::csvResistors (resistors, out);
    else if (list == List::octaves)
        report.csvOctaves (out);
    else
        report.csvShifts (resistors, out);
    return ExitStatus::success;
}

} // namespace stopwright

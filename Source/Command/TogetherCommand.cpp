// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/TogetherCommand.h"

#include "Command/Options.h"
#include "Command/TogetherReport.h"
#include "Study/StopEffect.h"
#include "Units/Error.h"
#include "Units/Pitch.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <numeric>
#include <ostream>

namespace stopwright
{

namespace
{

constexpr const char* footer =
    "These stops are drawn and no others. Tones add as complex amplitudes, since all generators run in step; the power sum\n"
    "is what unlike tones would give. A stop in company is loaded by the others. Keys sound one after the other, those of\n"
    "--chord at once.\n"
    "CSV header, --list sums: keys,stop,alone_dbv,in_company_dbv,power_sum_dbv,sum_dbv,sum_dbva,re_powers_db,"
    "re_strongest_db\n"
    "CSV header, --list partials: keys,harmonic,frequency_hz,strongest_peak_v,power_sum_peak_v,sum_peak_v,re_powers_db\n"
    "CSV header, --list polarity: stop,other,key,sum_re_stronger_db,turned_re_stronger_db,shared_partials,"
    "cancelled_harmonics\n"
    "Examples:\n"
    "  stopwright together Presets/LarkfieldOrgan.json --stops \"Krummhorn 8, Stopped flute 8\"\n"
    "  stopwright together Presets/LarkfieldOrgan.json --stops \"Diapason 8, Principal 4\" --chord \"C3 C4\"\n"
    "  stopwright together Presets/LarkfieldOrgan.json --stops \"Oboe 8, String 8\" --keys C4 --list partials --csv";

constexpr int keysPerOctave = 12;

/// Every key that is on the keyboard of one of the stops, rising.
std::vector<int> keysOf (const RailStudy& study, const std::vector<std::size_t>& stops)
{
    std::vector<int> keys;
    for (const std::size_t stop : stops)
    {
        std::vector<int> both;
        std::ranges::set_union (keys, compassOf (study, stop), std::back_inserter (both));
        keys = both;
    }
    return keys;
}

void requireKeys (const std::vector<int>& wanted, const std::vector<int>& there)
{
    for (const int key : wanted)
        if (! std::ranges::binary_search (there, key))
            throw Error (keyName (key) + " is on the keyboard of none of these stops, which go from "
                         + keyName (there.front()) + " to " + keyName (there.back()) + "; choose keys among these.");
}

/// The Cs and both ends.
std::vector<std::size_t> landmarks (const std::vector<int>& keys)
{
    std::vector<std::size_t> shown;
    for (std::size_t index = 0; index < keys.size(); ++index)
        if (index == 0 || index + 1 == keys.size() || keys[index] % keysPerOctave == 0)
            shown.push_back (index);
    return shown;
}

} // namespace

void TogetherCommand::declare (CLI::App& program)
{
    auto* const app =
        program.add_subcommand (name(), "What drawn stops add up to, and whether two of them cancel each other");
    selection_.declare (*app);
    addNames (*app, "--stops", stops_, "The stops that are drawn")->required();
    auto* const keys = addKeys (*app, "--keys", keys_, "These keys, one after the other (default: the compass)");
    addKeys (*app, "--chord", chord_, "These keys held at once")->excludes (keys);
    auto* const list = addChoice (*app, "--list", { "sums", "partials", "polarity" }, list_,
                                  "What CSV lists: sums (default), partials or polarity");
    list->needs (app->add_flag ("--csv", csv_, "Print CSV instead of tables"));
    app->footer (footer);
}

ExitStatus TogetherCommand::run (std::ostream& out, std::ostream& /*err*/)
{
    const RailStudy study = selection_.load();
    std::vector<std::size_t> stops;
    for (const std::size_t stop : stopsNamed (study, stops_))
        if (std::ranges::find (stops, stop) == stops.end())
            stops.push_back (stop);
    const auto there = keysOf (study, stops);
    requireKeys (keys_, there);
    requireKeys (chord_, there);

    const auto& single = keys_.empty() ? there : keys_;
    std::vector<std::vector<int>> groups;
    groups.reserve (single.size());
    for (const int key : single)
        groups.push_back ({ key });
    std::vector<std::size_t> shown (groups.size());
    std::iota (shown.begin(), shown.end(), std::size_t { 0 });
    if (keys_.empty())
        shown = landmarks (there);
    if (! chord_.empty())
    {
        groups = { chord_ };
        shown = { 0 };
    }

    const TogetherReport report (study, stops, groups);
    if (! csv_)
        report.printTables (shown, out);
    else if (list_ == 0)
        report.csvSums (out);
    else if (list_ == 1)
        report.csvPartials (out);
    else
        report.csvPolarity (out);
    return ExitStatus::success;
}

} // namespace stopwright

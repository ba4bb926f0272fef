// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ResponseCommand.h"

#include "Command/CardSelection.h"
#include "Command/NumberText.h"
#include "Command/Options.h"
#include "Command/TextTable.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <ostream>

namespace stopwright
{

namespace
{

constexpr int pointsOfCsv = 200;
constexpr int pointsOfTable = 31; // three an octave over ten octaves

constexpr const char* footer =
    "The level is re the tap's open-circuit voltage, on the analogue circuit itself.\n"
    "CSV header: frequency_hz,magnitude_db,phase_deg\n"
    "Example:\n"
    "  stopwright response Presets/Krummhorn8.json --tap \"Square 8\" --from 50 --to 10k --points 9";

void printCsv (const std::vector<ResponseRow>& rows, std::ostream& out)
{
    out << "frequency_hz,magnitude_db,phase_deg\n";
    for (const auto& row : rows)
        out << csvNumber (row.frequencyHz) << ',' << csvNumber (row.magnitudeDb) << ',' << csvNumber (row.phaseDegrees)
            << '\n';
}

void printTable (const std::vector<ResponseRow>& rows, std::ostream& out)
{
    TextTable table ({ "frequency Hz", "level dB", "phase deg" });
    for (const auto& row : rows)
        table.addRow (
            { fixedNumber (row.frequencyHz, 2), fixedNumber (row.magnitudeDb, 3), fixedNumber (row.phaseDegrees, 2) });
    table.print (out);
}

std::string tapOf (const Card& card, const ResponseRequest& request)
{
    return request.tap.empty() && ! card.taps.empty() ? card.taps.front().name : request.tap;
}

} // namespace

void ResponseCommand::declare (CLI::App& program)
{
    auto* const app = program.add_subcommand (name(), "Level and phase of a card over frequency, from a tap to a node");
    app->add_option ("CARD", cardFile_, "The stop card")->required()->type_name ("FILE");
    app->add_option ("--tap", request_.tap, "The tap that drives (default: the first)")->type_name ("NAME");
    app->add_option ("--node", request_.node, "The node to look at (default: the output)")->type_name ("NAME");

    constexpr QuantityRange frequencies { Quantity::frequency, 1e-3, 1e9, "Hz" };
    addQuantity (*app, "--from", frequencies, request_.fromHz, "Lowest frequency (default 20)")->type_name ("HZ");
    addQuantity (*app, "--to", frequencies, request_.toHz, "Highest frequency (default 20k)")->type_name ("HZ");
    addWhole (*app, "--points", 1, 100000, points_, "Number of points, log-spaced (default 200 with --csv, else 31)")
        ->type_name ("N");
    app->add_flag ("--csv", csv_, "Print CSV instead of a table");
    app->footer (footer);
    app->final_callback (
        [this]
        {
            if (request_.fromHz > request_.toHz)
                throw CLI::ValidationError ("--from lies above --to");
        });
}

ExitStatus ResponseCommand::run (std::ostream& out, std::ostream& /*err*/)
{
    const auto card = readSoundCard (cardFile_);
    request_.points = points_ != 0 ? points_ : csv_ ? pointsOfCsv : pointsOfTable;
    const auto rows = responseTable (card, request_);

    if (csv_)
    {
        printCsv (rows, out);
        return ExitStatus::success;
    }
    out << printable (card.name, DocumentLimits::titleCharacters) << ": from tap " << tapOf (card, request_)
        << " to node " << (request_.node.empty() ? card.output : request_.node) << "\n\n";
    printTable (rows, out);
    return ExitStatus::success;
}

} // namespace stopwright

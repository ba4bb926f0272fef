// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CompassCommand.h"

#include "Circuit/FindingWords.h"
#include "Command/CardSelection.h"
#include "Command/NumberText.h"
#include "Command/Options.h"
#include "Command/RailSelection.h"
#include "Command/TextTable.h"
#include "Organ/DocumentLimits.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/PlainText.h"
#include "Units/Error.h"
#include "Units/Pitch.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <cmath>
#include <ostream>

namespace stopwright
{

namespace
{

constexpr double hearingHz = 20000.0;

/// A typed pitch is a rounded one: "8372" means C9, which is 8372.018 Hz. Under a cent.
constexpr double roundedUp = 1.0005;

constexpr const char* footer =
    "Every partial up to 20 kHz counts. Levels are volts rms, plain and behind frequency weighting A (IEC 61672-1): of a\n"
    "card at its output, of an instrument's stops at the outlets, with the loading of their buses. Small signals: no\n"
    "stage clips. The centroid is the mean frequency of the partials, weighted by their amplitudes.\n"
    "CSV header: key,fundamental_hz,level_dbv,level_dbva,strongest_harmonic,strongest_hz,centroid_hz, then h1_db .. h16_db\n"
    "(dB re the strongest partial).\n"
    "Examples:\n"
    "  stopwright compass Presets/Krummhorn8.json\n"
    "  stopwright compass Presets/Krummhorn8.json --highest-generator 8372 --csv\n"
    "  stopwright compass Presets/LarkfieldOrgan.json --stop \"Krummhorn 8\"\n"
    "  stopwright compass Presets/LarkfieldOrgan.json --stop \"Diapason 8, Principal 4\" --csv";

void printCsv (const std::vector<CompassRow>& rows, std::ostream& out)
{
    out << "key,fundamental_hz,level_dbv,level_dbva,strongest_harmonic,strongest_hz,centroid_hz";
    for (std::size_t harmonic = 1; harmonic <= CompassRow::harmonicCount; ++harmonic)
        out << ",h" << harmonic << "_db";
    out << '\n';
    for (const CompassRow& row : rows)
    {
        const ToneLevel& level = row.level;
        out << keyName (row.key);
        for (const double number : { row.fundamentalHz, level.dbv(), level.dbva(), level.strongestHarmonic,
                                     level.strongestHz, level.centroidHz })
            out << ',' << csvNumber (number);
        for (const double db : row.harmonicDb)
            out << ',' << csvNumber (db);
        out << '\n';
    }
}

std::string levelCell (double db)
{
    return std::isfinite (db) ? fixedNumber (db, 2) : "-";
}

void printTable (const std::vector<CompassRow>& rows, std::ostream& out)
{
    constexpr std::size_t shownHarmonics = 8;
    std::vector<std::string> headings { "key", "Hz", "dBV", "dBV(A)", "strongest", "at Hz", "centroid Hz" };
    for (std::size_t harmonic = 1; harmonic <= shownHarmonics; ++harmonic)
        headings.push_back ("h" + std::to_string (harmonic));
    TextTable table (headings);
    for (const CompassRow& row : rows)
    {
        const bool isSilent = row.level.strongestPeakVolts == 0.0;
        std::vector<std::string> cells { keyName (row.key), fixedNumber (row.fundamentalHz, 2),
                                         levelCell (row.level.dbv()), levelCell (row.level.dbva()) };
        cells.push_back (isSilent ? "silent" : "h" + csvNumber (row.level.strongestHarmonic));
        cells.push_back (isSilent ? "-" : fixedNumber (row.level.strongestHz, 1));
        cells.push_back (isSilent ? "-" : fixedNumber (row.level.centroidHz, 0));
        for (std::size_t harmonic = 0; harmonic < shownHarmonics; ++harmonic)
            cells.push_back (levelCell (row.harmonicDb[harmonic]));
        table.addRow (cells);
    }
    table.print (out);
}

std::string joined (const std::vector<std::string>& names)
{
    std::string text;
    for (const auto& name : names)
        text += (text.empty() ? "" : ", ") + partWords (name);
    return text;
}

} // namespace

void CompassCommand::declare (CLI::App& program)
{
    auto* const app =
        program.add_subcommand (name(), "Levels and harmonics key by key, every partial to 20 kHz counted");
    app->add_option ("DOCUMENT", file_, "A stop card or an instrument")->required()->type_name ("FILE");
    addNames (
        *app, "--stop", stops_,
        "Of an instrument: the stop, or several of one division together (default: those drawn when it is opened)");
    highestGenerator_ = addQuantity (*app, "--highest-generator", { Quantity::frequency, 20.0, hearingHz, "Hz" },
                                     highestGeneratorHz_, "Of a card alone: no generator above this (default: 20 kHz)");
    app->add_flag ("--csv", csv_, "Print CSV instead of a table");
    app->footer (footer);
}

CompassCommand::Listing CompassCommand::ofCard() const
{
    if (! stops_.empty())
        throw Error (file_.string() + ": a card has no stops to choose from; leave --stop out, or name an instrument.");
    const Card card = readSoundCard (file_);
    const double highestHz = highestGenerator_->count() > 0 ? roundedUp * highestGeneratorHz_ : hearingHz;
    return { printable (card.name, DocumentLimits::titleCharacters)
                 + ", at its output, equal temperament at A4 = 440 Hz",
             compassTable (card, keySourceForCardAlone (card, highestHz)) };
}

CompassCommand::Listing CompassCommand::ofInstrument() const
{
    if (highestGenerator_->count() > 0)
        throw Error (file_.string()
                     + ": an instrument has its own highest generator; --highest-generator is for a card alone.");
    const RailStudy study = readRail (file_);
    const auto stops = stopsOfOneDivision (study, stops_);
    std::vector<std::string> names;
    names.reserve (stops.size());
    for (const std::size_t stop : stops)
        names.push_back (study.instrument().stops[stop].name);
    return { joined (names) + ", at the outlets of " + partWords (study.instrument().name) + ", "
                 + partWords (study.instrument().stops[stops.front()].division),
             compassTable (study, stops, study.withDrawn (stops)) };
}

ExitStatus CompassCommand::run (std::ostream& out, std::ostream&)
{
    const auto listing = isInstrument (file_) ? ofInstrument() : ofCard();
    if (csv_)
    {
        printCsv (listing.rows, out);
        return ExitStatus::success;
    }
    out << listing.title << "\n\n";
    printTable (listing.rows, out);
    return ExitStatus::success;
}

} // namespace stopwright

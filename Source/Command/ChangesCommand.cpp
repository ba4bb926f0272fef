// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ChangesCommand.h"

#include "Command/CardReport.h"
#include "Organ/CardDocument.h"
#include "Organ/ChangeList.h"
#include "Organ/DocumentLimits.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/PlainText.h"
#include "Units/CsvCell.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <ostream>

namespace stopwright
{

namespace
{

constexpr const char* header = "place,what,as_found,as_altered,date,why,way_back,card";

constexpr const char* footer =
    "Lists what was altered at the tablets and at the taps of their cards: as found -> as altered, the day and the reason\n"
    "where they are noted, and how to put it back. The documents note it in the field asFound.\n"
    "CSV header: place,what,as_found,as_altered,date,why,way_back,card\n"
    "Examples:\n"
    "  stopwright changes Presets/LarkfieldOrgan.json\n"
    "  stopwright changes Presets/LarkfieldOrgan.json --csv";

/// What a document is called, its alterations, and which of its cards could not be looked at.
struct Found
{
    std::string title;
    std::vector<Alteration> alterations;
    std::vector<std::string> errors;
};

Found lookAt (const std::filesystem::path& file)
{
    if (documentKind (file) != "instrument")
    {
        const auto card = readCard (file);
        return { card.name, changeList (card), {} };
    }
    const auto instrument = readInstrument (file);
    const auto cards = findInstrumentCards (instrument, file);
    return { instrument.name, changeList (instrument, cards), cards.errors };
}

/// A text of many lines on one.
std::string oneLine (std::string text)
{
    std::ranges::replace (text, '\n', ' ');
    return printable (text, text.size());
}

void printList (const Found& found, const std::filesystem::path& file, std::ostream& out)
{
    out << file.string() << ": \"" << printable (found.title, DocumentLimits::titleCharacters) << "\", "
        << (found.alterations.empty() ? "as found: no alteration is noted"
                                      : counted (found.alterations.size(), "alteration"))
        << '\n';
    for (const auto& alteration : found.alterations)
    {
        out << "  " << oneLine (alteration.words) << '\n';
        const auto& [date, why] = alteration.note;
        if (! date.empty() || ! why.empty())
            out << "      noted    " << date << (date.empty() || why.empty() ? "" : ": ") << oneLine (why) << '\n';
        out << "      way back " << oneLine (alteration.wayBack) << '\n';
    }
}

void printCsv (const Found& found, std::ostream& out)
{
    out << header << '\n';
    for (const auto& alteration : found.alterations)
        out << csvCell (alteration.where) << ',' << csvCell (alteration.what) << ',' << csvCell (alteration.asFound)
            << ',' << csvCell (alteration.asAltered) << ',' << alteration.note.date << ','
            << csvCell (oneLine (alteration.note.why)) << ',' << csvCell (alteration.wayBack) << ','
            << csvCell (alteration.cardFile) << '\n';
}

} // namespace

void ChangesCommand::declare (CLI::App& program)
{
    auto* const app = program.add_subcommand (name(), "What of an instrument is otherwise than it was found");
    app->add_option ("INSTRUMENT", file_, "The document of the instrument, or a card alone")
        ->required()
        ->type_name ("FILE");
    app->add_flag ("--csv", csv_, "Print CSV instead of text");
    app->footer (footer);
}

ExitStatus ChangesCommand::run (std::ostream& out, std::ostream& err)
{
    const auto found = lookAt (file_);
    if (csv_)
        printCsv (found, out);
    else
        printList (found, file_, out);
    for (const auto& sentence : found.errors)
        err << "stopwright: " << sentence << '\n';
    return found.errors.empty() ? ExitStatus::success : ExitStatus::badInput;
}

} // namespace stopwright

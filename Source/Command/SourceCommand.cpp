// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/SourceCommand.h"

#include "Command/MaskWords.h"
#include "Command/NumberText.h"
#include "Command/Options.h"
#include "Command/SourceWords.h"
#include "Organ/DocumentLimits.h"
#include "Organ/MaskDocument.h"
#include "Organ/PlainText.h"
#include "Units/CsvCell.h"
#include "Units/Decibels.h"
#include "Units/Pitch.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <array>
#include <ostream>

namespace stopwright
{

namespace
{

constexpr const char* footer =
    "The tapped waves are looked at before the filter, open circuit, each level re their strongest partial. A partial is\n"
    "too weak when it lies more than the limit below the wanted level; of a band, the partial nearest to its centre is\n"
    "looked for. The ratio brings the wanted partial of both waves together to the wanted level re their strongest; the\n"
    "resistor holds for a virtual earth, or where both feed resistors are large beside what follows.\n"
    "Without --keys: every C the mask is meant for, or all its keys where no C is among them.\n"
    "CSV header: key,entry,harmonic,frequency_hz,wanted_db,source_db,state,cause,bus,bus_harmonic,bus_db,ratio_db,ratio,"
    "resistor_ratio\n"
    "Examples:\n"
    "  stopwright source Presets/LarkfieldOrgan.json --stop \"Clarinet 8\" --mask Presets/Masks/Diapason8.json\n"
    "  stopwright source Presets/LarkfieldOrgan.json --stop \"Oboe 8\" --mask Presets/Masks/OboeFormants.json --keys "
    "\"C3 C4\" --csv";

constexpr const char* header = "key,entry,harmonic,frequency_hz,wanted_db,source_db,state,cause,bus,bus_harmonic,"
                               "bus_db,ratio_db,ratio,resistor_ratio\n";

std::string_view stateWord (WishState state)
{
    constexpr std::array<std::string_view, 4> words { "present", "too weak", "absent", "above 20 kHz" };
    return words[static_cast<std::size_t> (state)];
}

std::string causesOf (const WantedPartial& wanted)
{
    std::string causes;
    for (const auto& reason : wanted.reasons)
        causes += (causes.empty() ? "" : "; ") + std::string (causeWord (reason.cause));
    return causes;
}

void printCsv (const SourceStudy& study,
               const TargetMask& mask,
               int key,
               const std::vector<WantedPartial>& wishes,
               std::ostream& out)
{
    for (const auto& wanted : wishes)
    {
        const auto start = keyName (key) + ',' + entryCell (mask, wanted.entry) + ',' + csvNumber (wanted.harmonic)
                           + ',' + csvNumber (wanted.frequencyHz) + ',' + csvNumber (wanted.wantedDb) + ','
                           + csvNumber (wanted.sourceDb) + ',' + std::string (stateWord (wanted.state)) + ','
                           + causesOf (wanted) + ',';
        if (wanted.supplies.empty())
            out << start << ",,,,,\n";
        for (const auto& supply : wanted.supplies)
        {
            out << start << csvCell (study.keyedBuses()[supply.bus].name) << ',' << supply.partial << ','
                << csvNumber (supply.levelDb) << ',';
            if (supply.ratio)
                out << csvNumber (toDecibels (*supply.ratio)) << ',' << csvNumber (*supply.ratio) << ','
                    << csvNumber (1.0 / *supply.ratio) << '\n';
            else
                out << ",,\n";
        }
    }
}

void printWish (const SourceStudy& study, const TargetMask& mask, const WantedPartial& wanted, std::ostream& out)
{
    out << "  " << entryWords (mask, wanted.entry) << ", harmonic " << fixedNumber (wanted.harmonic, 0) << " at "
        << fixedNumber (wanted.frequencyHz, 1) << " Hz, wanted at " << fixedNumber (wanted.wantedDb, 1)
        << " dB: " << stateWords (wanted) << '\n';
    for (const auto& reason : wanted.reasons)
        out << "    " << reasonWords (reason, study.card()) << '\n';
    const double lowestDb = wanted.wantedDb - wishOf (mask, wanted.entry).toleranceDb;
    for (const auto& supply : wanted.supplies)
        out << "    " << supplyWords (supply, study.keyedBuses()[supply.bus], lowestDb) << '\n';
    if (wanted.supplies.empty() && wanted.state != WishState::aboveHearing)
        out << "    no keyed bus has it strong enough on this key: it needs another source\n";
}

void printKey (const SourceStudy& study,
               const TargetMask& mask,
               int key,
               const std::vector<WantedPartial>& wishes,
               std::ostream& out)
{
    const auto isLacking = [] (const WantedPartial& wanted) { return wanted.state != WishState::present; };
    if (wishes.empty())
    {
        out << keyName (key) << ": the mask wants no partial of this key\n";
        return;
    }
    const auto lacking = std::ranges::count_if (wishes, isLacking);
    const auto there = static_cast<std::ptrdiff_t> (wishes.size()) - lacking;
    out << keyName (key) << ": " << there << " of " << wishes.size() << " wanted partials "
        << (there == 1 ? "is" : "are") << " in the tapped waves\n";
    for (const auto& wanted : wishes)
        if (isLacking (wanted))
            printWish (study, mask, wanted, out);
}

/// The Cs among them, if there are any and nobody named the keys.
std::vector<int> fewerOf (const std::vector<int>& keys, bool areNamed)
{
    constexpr int octave = 12;
    std::vector<int> cs;
    for (const int key : keys)
        if (key % octave == 0)
            cs.push_back (key);
    return areNamed || cs.empty() ? keys : cs;
}

} // namespace

void SourceCommand::declare (CLI::App& program)
{
    constexpr double mostDb = 200.0;
    auto* const app = program.add_subcommand (
        name(), "Which partials that a mask wants the tapped waves lack, why, and which keyed bus has them");
    instrument_.declare (*app);
    addName (*app, "--stop", stop_, "The stop of the instrument")->required();
    app->add_option ("--mask", maskFile_, "The document of the mask")->required()->type_name ("FILE");
    addKeys (*app, "--keys,--key", keys_, "The keys to look at (default: the Cs the mask is meant for)");
    addQuantity (*app, "--limit", { Quantity::number, 0.0, mostDb, "dB" }, limitDb_,
                 "So many dB below the wanted level is too weak (20, common practice)")
        ->type_name ("DB");
    app->add_flag ("--csv", csv_, "Print CSV instead of sentences");
    app->footer (footer);
}

ExitStatus SourceCommand::run (std::ostream& out, std::ostream& /*err*/)
{
    const auto mask = readMask (maskFile_);
    const auto rail = instrument_.load();
    const auto stop = rail.findStop (stop_);
    const auto& division = rail.instrument().stops[stop].division;
    const SourceStudy study (rail.instrument(), division, rail.card (stop));
    const auto keys = fewerOf (keysToCompare (mask, keys_, study.keySource().lowestKey, study.keySource().highestKey),
                               ! keys_.empty());
    if (csv_)
        out << header;
    else
        out << printable (stop_, DocumentLimits::titleCharacters) << " of "
            << printable (rail.instrument().name, DocumentLimits::titleCharacters) << ", " << printable (division)
            << ": its tapped waves and the\n"
            << maskWords (mask, keys) << '\n';
    for (const int key : keys)
    {
        const auto wishes = study.wishes (mask, key, limitDb_);
        if (csv_)
            printCsv (study, mask, key, wishes, out);
        else
            printKey (study, mask, key, wishes, out);
    }
    return ExitStatus::success;
}

} // namespace stopwright

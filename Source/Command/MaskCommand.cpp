// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/MaskCommand.h"

#include "Command/CardSelection.h"
#include "Command/MaskWords.h"
#include "Command/NumberText.h"
#include "Command/Options.h"
#include "Command/RailSelection.h"
#include "Command/TextTable.h"
#include "Organ/DocumentLimits.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/MaskDocument.h"
#include "Organ/PlainText.h"
#include "Units/Error.h"
#include "Units/Pitch.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <cmath>
#include <ostream>

namespace stopwright
{

namespace
{

constexpr const char* footer =
    "A stop of an instrument is heard alone behind its bus and preamp, a card alone at its output. The gain that fits\n"
    "the harmonics best is taken out first (least squares); bands count from the strongest partial of the tone. rms and\n"
    "largest are distances from the wanted levels, beyond is what passes the tolerance. A wanted partial that is absent\n"
    "has no distance in dB: stopwright source says why it is. Without --keys: the keys the mask is meant for.\n"
    "CSV header: key,entry,frequency_hz,wanted_db,tolerance_db,level_db,residual_db,outside_db,verdict,offset_db,rms_db,"
    "largest_db,rms_outside_db,largest_outside_db\n"
    "Examples:\n"
    "  stopwright mask Presets/LarkfieldOrgan.json --stop \"Krummhorn 8\" --mask Presets/Masks/Krummhorn8.json\n"
    "  stopwright mask Presets/LarkfieldOrgan.json --stop \"Oboe 8\" --mask Presets/Masks/OboeFormants.json --csv\n"
    "  stopwright mask Presets/Clarinet8.json --mask Presets/Masks/Clarinet8.json --keys \"C3 C4\"";

constexpr const char* header = "key,entry,frequency_hz,wanted_db,tolerance_db,level_db,residual_db,outside_db,verdict,"
                               "offset_db,rms_db,largest_db,rms_outside_db,largest_outside_db\n";

void printCsv (const TargetMask& mask, const std::vector<MaskFit>& fits, std::ostream& out)
{
    out << header;
    for (const auto& fit : fits)
        for (const auto& entry : fit.entries)
            out << keyName (fit.key) << ',' << entryCell (mask, entry.entry) << ',' << csvNumber (entry.frequencyHz)
                << ',' << csvNumber (entry.wantedDb) << ',' << csvNumber (wishOf (mask, entry.entry).toleranceDb) << ','
                << csvNumber (entry.levelDb) << ',' << csvNumber (entry.residualDb) << ','
                << csvNumber (entry.outsideDb) << ',' << verdictWord (entry.verdict) << ',' << csvNumber (fit.offsetDb)
                << ',' << csvNumber (fit.rmsDb) << ',' << csvNumber (fit.largestDb) << ','
                << csvNumber (fit.rmsOutsideDb) << ',' << csvNumber (fit.largestOutsideDb) << '\n';
}

std::string outsideWords (const TargetMask& mask, const MaskFit& fit)
{
    constexpr std::size_t mostNamed = 4;
    std::vector<std::string> words;
    for (const auto& entry : fit.entries)
    {
        if (entry.verdict == MaskVerdict::inside || entry.verdict > MaskVerdict::absent)
            continue;
        auto word = entryWords (mask, entry.entry) + " " + std::string (verdictWord (entry.verdict));
        if (entry.verdict != MaskVerdict::absent)
            word += " by " + fixedNumber (entry.outsideDb, 1);
        words.push_back (std::move (word));
    }
    if (fit.compared == 0)
        return "nothing to compare";
    std::string line;
    for (std::size_t i = 0; i < std::min (words.size(), mostNamed); ++i)
        line += (i == 0 ? "" : ", ") + words[i];
    if (words.size() > mostNamed)
        line += " and " + std::to_string (words.size() - mostNamed) + " more";
    return line.empty() ? "none" : line;
}

void printKeys (const TargetMask& mask, const std::vector<MaskFit>& fits, std::ostream& out)
{
    TextTable table ({ "key", "offset dB", "rms dB", "largest dB", "beyond dB", "outside" });
    for (const auto& fit : fits)
        table.addRow ({ keyName (fit.key), fixedNumber (fit.offsetDb, 2), fixedNumber (fit.rmsDb, 2),
                        fixedNumber (fit.largestDb, 2), fixedNumber (fit.largestOutsideDb, 2),
                        outsideWords (mask, fit) });
    table.print (out);
}

void printEntries (const TargetMask& mask, const MaskFit& fit, std::ostream& out)
{
    TextTable table ({ "entry", "frequency Hz", "wanted dB", "found dB", "off by dB", "allowed dB", "verdict" });
    for (const auto& entry : fit.entries)
    {
        const bool isBound = entry.entry < mask.harmonics.size() && mask.harmonics[entry.entry].atMost;
        const bool isFound = std::isfinite (entry.levelDb);
        table.addRow (
            { entryWords (mask, entry.entry), fixedNumber (entry.frequencyHz, 1),
              (isBound ? "at most " : "") + fixedNumber (entry.wantedDb, 1),
              isFound ? fixedNumber (entry.levelDb, 2) : "-", isFound ? fixedNumber (entry.residualDb, 2) : "-",
              fixedNumber (wishOf (mask, entry.entry).toleranceDb, 1), std::string (verdictWord (entry.verdict)) });
    }
    out << '\n';
    table.print (out);
}

void printSummary (const MaskSummary& summary, std::ostream& out)
{
    out << '\n' << summary.keysInside << " of " << summary.keys << (summary.keys == 1 ? " key" : " keys");
    out << " within the tolerances, rms " << fixedNumber (summary.rmsDb, 2) << " dB over "
        << (summary.keys == 1 ? "it" : "all of them");
    if (summary.keyOfLargest >= 0)
        out << ", farthest outside on " << keyName (summary.keyOfLargest) << " by "
            << fixedNumber (summary.largestOutsideDb, 2) << " dB";
    out << '\n';
    if (summary.keysWithAbsent > 0)
        out << "on " << summary.keysWithAbsent << (summary.keysWithAbsent == 1 ? " key" : " keys")
            << " a wanted partial is absent; stopwright source says why\n";
}

} // namespace

void MaskCommand::declare (CLI::App& program)
{
    auto* const app = program.add_subcommand (name(), "How far a stop is from a target mask, key by key");
    app->add_option ("DOCUMENT", document_, "An instrument, or a stop card alone")->required()->type_name ("FILE");
    addName (*app, "--stop", stop_, "The stop of the instrument");
    app->add_option ("--mask", maskFile_, "The document of the mask")->required()->type_name ("FILE");
    addKeys (*app, "--keys,--key", keys_, "The keys to compare (default: those the mask is meant for)");
    app->add_flag ("--csv", csv_, "Print CSV instead of a table");
    app->footer (footer);
}

MaskCommand::Comparison MaskCommand::compareCard (const TargetMask& mask) const
{
    if (! stop_.empty())
        throw Error (document_.string() + ": a card is one stop already; leave --stop out, or name an instrument.");
    const auto card = readSoundCard (document_);
    const auto keySource = keySourceForCardAlone (card);
    Comparison comparison {
        printable (card.name, DocumentLimits::titleCharacters) + " alone, equal temperament at A4 = 440 Hz", {}
    };
    for (const int key : keysToCompare (mask, keys_, keySource.lowestKey, keySource.highestKey))
        comparison.fits.push_back (fitMask (mask, toneOfCard (card, keySource, key, mask.unison)));
    return comparison;
}

MaskCommand::Comparison MaskCommand::compareStop (const TargetMask& mask) const
{
    if (stop_.empty())
        throw Error (document_.string() + ": name the stop to compare, as in --stop \"Krummhorn 8\".");
    const RailStudy study = readRail (document_);
    const auto stop = stopNamed (study, stop_);
    const auto& keySource = study.keySource (stop);
    Comparison comparison { printable (stop_, DocumentLimits::titleCharacters) + " of "
                                + printable (study.instrument().name, DocumentLimits::titleCharacters) + ", "
                                + printable (study.instrument().stops[stop].division),
                            {} };
    const auto alone = study.withDrawn ({ stop });
    for (const int key : keysToCompare (mask, keys_, keySource.lowestKey, keySource.highestKey))
        comparison.fits.push_back (fitMask (mask, toneOfStop (study, stop, key, alone, mask.unison)));
    return comparison;
}

MaskCommand::Comparison MaskCommand::compare (const TargetMask& mask) const
{
    return isInstrument (document_) ? compareStop (mask) : compareCard (mask);
}

ExitStatus MaskCommand::run (std::ostream& out, std::ostream& /*err*/)
{
    const auto mask = readMask (maskFile_);
    const auto comparison = compare (mask);
    if (csv_)
    {
        printCsv (mask, comparison.fits, out);
        return ExitStatus::success;
    }
    std::vector<int> keys;
    for (const auto& fit : comparison.fits)
        keys.push_back (fit.key);
    out << comparison.what << ", against the\n" << maskWords (mask, keys) << '\n';
    printKeys (mask, comparison.fits, out);
    if (comparison.fits.size() == 1)
        printEntries (mask, comparison.fits.front(), out);
    printSummary (summaryOf (comparison.fits), out);
    return ExitStatus::success;
}

} // namespace stopwright

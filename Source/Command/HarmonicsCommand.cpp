// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/HarmonicsCommand.h"

#include "Command/NumberText.h"
#include "Command/Options.h"
#include "Command/TextTable.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Study/HarmonicTable.h"
#include "Units/Decibels.h"
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

constexpr const char* footer =
    "Harmonics count from the key's 8 ft pitch, so a 16 ft tap gives 0.5. All taps are added as complex amplitudes;\n"
    "levels are dB re the strongest partial.\n"
    "CSV header: harmonic,frequency_hz,source_peak_v,output_peak_v,output_db\n"
    "Examples:\n"
    "  stopwright harmonics Presets/Krummhorn8.json --key C4\n"
    "  stopwright harmonics Presets/Krummhorn8.json --key C6 --instrument Presets/LarkfieldOrgan.json --csv";

void printCsv (const std::vector<HarmonicRow>& rows, std::ostream& out)
{
    out << "harmonic,frequency_hz,source_peak_v,output_peak_v,output_db\n";
    for (const auto& row : rows)
        out << csvNumber (row.harmonic) << ',' << csvNumber (row.frequencyHz) << ',' << csvNumber (row.sourcePeakVolts)
            << ',' << csvNumber (row.outputPeakVolts) << ',' << csvNumber (row.outputDb) << '\n';
}

/// A partial that the waves do not hold is named so, for no network can bring it out.
std::vector<std::string> cellsOf (const HarmonicRow& row)
{
    constexpr double millivolts = 1e3;
    std::string harmonic = csvNumber (row.harmonic);
    std::string frequency = fixedNumber (row.frequencyHz, 2);
    if (! std::isfinite (row.outputDb))
        return { std::move (harmonic), std::move (frequency), "absent", "absent", "-" };
    return { std::move (harmonic), std::move (frequency), fixedNumber (row.sourcePeakVolts * millivolts, 4),
             fixedNumber (row.outputPeakVolts * millivolts, 4), fixedNumber (row.outputDb, 2) };
}

void printTable (const std::vector<HarmonicRow>& rows, std::ostream& out)
{
    TextTable table ({ "harmonic", "frequency Hz", "source mV peak", "output mV peak", "output dB" });
    for (const auto& row : rows)
        table.addRow (cellsOf (row));
    table.print (out);
}

} // namespace

void HarmonicsCommand::declare (CLI::App& program)
{
    auto* const app =
        program.add_subcommand (name(), "Every partial of one key up to 20 kHz, at the source and at the output");
    selection_.declare (*app);
    addKey (*app, "--key", key_, "The key, C4 being the middle one")->required();
    app->add_flag ("--csv", csv_, "Print CSV instead of a table");
    app->footer (footer);
}

ExitStatus HarmonicsCommand::run (std::ostream& out, std::ostream& err)
{
    const auto selected = selection_.load();
    const auto rows = harmonicTable (selected.card, selected.keySource, key_);
    if (rows.empty())
        err << "stopwright: No generator sounds for " << keyName (key_)
            << " at the footages of this card; choose a key nearer to the middle, or another footage.\n";
    if (csv_)
    {
        printCsv (rows, out);
        return ExitStatus::success;
    }

    out << printable (selected.card.name, DocumentLimits::titleCharacters) << ", key " << keyName (key_) << " ("
        << fixedNumber (selected.keySource.tuning.keyHz (key_), 3) << " Hz), " << selected.tuningWords << "\n\n";
    printTable (rows, out);
    const double volts = rmsVolts (rows);
    out << "\nall partials to 20 kHz: " << formatForReading (volts, Quantity::voltage, 4) << " rms, "
        << fixedNumber (toDecibels (volts), 2) << " dB re 1 V\n";
    return ExitStatus::success;
}

} // namespace stopwright

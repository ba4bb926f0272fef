// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/HeadroomCommand.h"

#include "Command/HeadroomRemarks.h"
#include "Command/HeadroomWords.h"
#include "Command/InstrumentSelection.h"
#include "Command/NumberText.h"
#include "Command/Options.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Units/Engineering.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <ostream>

namespace stopwright
{

namespace
{

const std::string& footer()
{
    static const std::string text =
        std::string (
            "Volts behind each stage, nothing clipping before it. All octaves of a pitch class are one phase-locked\n"
            "wave; different pitch classes are independent, so their peaks add to the bound and their distributions\n"
            "convolve. Edges are rounded within a thousandth of the fastest generator's period instead of\n"
            "overshooting, so that time at the very top of a square comes out up to 2 % (of itself) low.\n"
            "A passive bus's load is taken to hold the input of the stage behind it; a series resistor is worked out with\n"
            "the impedance of what is in front of it.\n"
            "The keys go to every division that drawn stops are played from, and there to those that are on it; couplers\n"
            "play from there. What is left away or stays silent is named, with --csv on standard error.\n"
            "0.1 % of time, 3 dB, 0.6 V a diode and 1 mA into a pin are common practice; the options set them.\n"
            "CSV cells are empty where there is no limit or no sound; inf is a current that nothing limits.\n"
            "CSV header: ")
        + headroomCsvHeader + "\nCSV header with --inputs: " + inputsCsvHeader
        + "\nExamples:\n"
          "  stopwright headroom Presets/LarkfieldOrgan.json\n"
          "  stopwright headroom Presets/LarkfieldOrgan.json --stops \"Diapason 8, Principal 4, Trumpet 8\" --all-keys "
          "--csv\n"
          "  stopwright headroom Presets/LarkfieldOrgan.json --stops \"Krummhorn 8, Oboe 8\" --chord \"C3 G3 E4\" "
          "--inputs";
    return text;
}

std::string tabletsOf (const SelectedInstrument& selected)
{
    std::string tablets;
    for (const auto& tablet : drawnTablets (selected))
        tablets += (tablets.empty() ? "" : ", ") + printable (tablet, DocumentLimits::titleCharacters);
    return tablets;
}

} // namespace

void HeadroomCommand::declare (CLI::App& program)
{
    auto* const app = program.add_subcommand (
        name(), "How near drawn stops and sounding keys bring each bus and preamp stage to its rails");
    app->add_option ("INSTRUMENT", file_, "The document of the instrument")->required()->type_name ("FILE");
    addNames (*app, "--stops", stops_, "The tablets to draw, couplers too (default: those the document draws)");
    auto* const chord = addKeys (*app, "--chord", wish_.chord,
                                 "The keys that are held (default: ten notes, C2 G2 C3 E3 G3 C4 E4 G4 C5 E5)");
    app->add_flag ("--all-keys", wish_.allKeys, "Hold every key instead")->excludes (chord);
    app->add_option ("--division", wish_.division,
                     "The one keyboard they are held on (default: each that a drawn stop is played from)")
        ->type_name ("NAME");
    addQuantity (*app, "--margin", { Quantity::number, 0.0, 40.0, "dB" }, request_.marginDb,
                 "Room the remedies restore, in dB (default 3, common practice)");
    addQuantity (*app, "--share", { Quantity::number, 1e-6, 50.0, "%" }, exceededPercent_,
                 "Share of time in percent that may be beyond (default 0.1, common practice)");
    app->add_flag ("--inputs", inputs_, "Tell the current into the input pins instead");
    addQuantity (*app, "--diode", { Quantity::voltage, 0.0, 5.0, "V" }, limits_.diodeVolts,
                 "Drop of a clamp diode (default 0.6 V, common practice)");
    addQuantity (*app, "--pin-limit", { Quantity::current, 1e-9, 1.0, "A" }, limits_.pinAmps,
                 "Most current into a pin (default 1 mA, common practice)");
    addQuantity (*app, "--series", { Quantity::resistance, 0.0, 1e9, "ohm" }, seriesOhms_,
                 "Resistor that is in front of every pin (default none)");
    app->add_flag ("--csv", csv_, "Print CSV instead of a table");
    app->footer (footer());
}

void HeadroomCommand::printInputs (const std::vector<InputReading>& readings, std::ostream& out) const
{
    if (csv_)
    {
        printInputsCsv (readings, out);
        return;
    }
    printInputsTable (readings, out);
    out << "\nAt the peaks, clamp diodes of " << formatForReading (limits_.diodeVolts, Quantity::voltage)
        << "; a pin is let carry " << formatForReading (limits_.pinAmps, Quantity::current)
        << " (both common practice unless set).\n"
           "The supplies count as off while the generators are live; only the first input behind the stops gets any "
           "then.\n";
}

void HeadroomCommand::printStages (const std::vector<StageHeadroom>& stages, std::ostream& out) const
{
    if (csv_)
    {
        printHeadroomCsv (stages, out);
        return;
    }
    printHeadroomTable (stages, exceededPercent_, out);
    out << '\n';
    printHeadroomAdvice (stages, request_.marginDb, out);
    out << "A margin of " << csvNumber (request_.marginDb) << " dB and " << csvNumber (exceededPercent_)
        << " % of time are common practice unless set.\n";
}

// All is worked out before the first word: what cannot be is then nothing but an error.
ExitStatus HeadroomCommand::run (std::ostream& out, std::ostream& err)
{
    constexpr double percent = 100.0;
    const auto selected = selectInstrument (file_, stops_);
    const auto& instrument = selected.instrument;
    const auto divisions = heldDivisions (instrument, wish_);
    HeadroomRequest request = request_;
    request.held = keysOf (divisions);
    request.exceededShare = exceededPercent_ / percent;
    const auto silent = silentStops (instrument, selected.cards, request.held);
    requireAnySound (instrument, silent);
    std::vector<InputReading> readings;
    std::vector<StageHeadroom> stages;
    if (inputs_)
        readings = inputSurvey (instrument, selected.cards, request.held, limits_, seriesOhms_);
    else
        stages = headroomOf (instrument, selected.cards, request);

    const auto remarks = headroomRemarks (instrument, divisions, silent);
    if (! csv_)
        out << printable (instrument.name, DocumentLimits::titleCharacters) << ": " << tabletsOf (selected) << "; "
            << heldWords (divisions) << '\n';
    for (const auto& remark : remarks)
        (csv_ ? err << "stopwright: " : out) << remark << '\n';
    if (! csv_)
        out << '\n';
    if (inputs_)
        printInputs (readings, out);
    else
        printStages (stages, out);
    return ExitStatus::success;
}

} // namespace stopwright

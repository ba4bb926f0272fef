// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/HeadroomCommand.h"

#include "Command/HeadroomWords.h"
#include "Command/InstrumentSelection.h"
#include "Command/NumberText.h"
#include "Command/Options.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Study/InputSurvey.h"
#include "Units/Engineering.h"
#include "Units/Pitch.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
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
            "0.1 % of time, 3 dB, 0.6 V a diode and 1 mA into a pin are common practice; the options set them.\n"
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
    auto* const chord =
        addKeys (*app, "--chord", chord_, "The keys that are held (default: ten notes, C2 G2 C3 E3 G3 C4 E4 G4 C5 E5)");
    app->add_flag ("--all-keys", allKeys_, "Hold every key, of --division or of all divisions")->excludes (chord);
    app->add_option ("--division", division_, "The keyboard they are held on (default: that of the first drawn stop)")
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

std::vector<HeldKey> HeadroomCommand::heldKeys (const SelectedInstrument& selected) const
{
    if (allKeys_)
        return allKeysOf (selected.instrument, division_);
    const auto& stops = selected.instrument.stops;
    const auto first = std::ranges::find_if (stops, [] (const StopTablet& stop)
                                             { return stop.drawn && ! stop.cardFile.empty() && ! stop.bus.empty(); });
    const auto& division = division_.empty() && first != stops.end() ? first->division : division_;
    std::vector<HeldKey> held;
    held.reserve (chord_.size());
    for (const int key : chord_)
        held.push_back ({ division, key });
    return held;
}

void HeadroomCommand::runInputs (const SelectedInstrument& selected,
                                 const std::vector<HeldKey>& held,
                                 std::ostream& out) const
{
    const auto readings = inputSurvey (selected.instrument, selected.cards, held, limits_, seriesOhms_);
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

ExitStatus HeadroomCommand::run (std::ostream& out, std::ostream&)
{
    constexpr double percent = 100.0;
    const auto selected = selectInstrument (file_, stops_);
    const auto held = heldKeys (selected);
    if (! csv_)
        out << printable (selected.instrument.name, DocumentLimits::titleCharacters) << ": " << tabletsOf (selected)
            << "; " << held.size() << " keys held\n\n";
    if (inputs_)
    {
        runInputs (selected, held, out);
        return ExitStatus::success;
    }
    HeadroomRequest request = request_;
    request.held = held;
    request.exceededShare = exceededPercent_ / percent;
    const auto stages = headroomOf (selected.instrument, selected.cards, request);
    if (csv_)
    {
        printHeadroomCsv (stages, out);
        return ExitStatus::success;
    }
    printHeadroomTable (stages, exceededPercent_, out);
    out << '\n';
    printHeadroomAdvice (stages, request.marginDb, out);
    out << "A margin of " << csvNumber (request.marginDb) << " dB and " << csvNumber (exceededPercent_)
        << " % of time are common practice unless set.\n";
    return ExitStatus::success;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/DrawingCommand.h"

#include "Command/Options.h"
#include "Organ/CardDocument.h"
#include "Organ/DocumentFile.h"
#include "Organ/InstrumentCards.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/UnknownName.h"
#include "Sheet/SchematicDrawing.h"
#include "Sheet/SvgWriter.h"
#include "Units/Error.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <ostream>

namespace stopwright
{

namespace
{

constexpr const char* footer =
    "Signal from left to right, common at the bottom. A network that cannot be computed is drawn too.\n"
    "Examples:\n"
    "  stopwright drawing Presets/Krummhorn8.json --out krummhorn.svg\n"
    "  stopwright drawing Presets/LarkfieldOrgan.json --stop \"Oboe 8\" --out oboe.svg --zigzag";

} // namespace

void DrawingCommand::declare (CLI::App& program)
{
    auto* const app = program.add_subcommand (name(), "The schematic of a card as an SVG file");
    app->add_option ("DOCUMENT", document_, "A stop card, or an instrument with --stop")
        ->required()
        ->type_name ("FILE");
    addName (*app, "--stop", stop_, "The stop of the instrument");
    app->add_option ("--out", output_, "The file to write; one that is there is replaced")
        ->required()
        ->type_name ("FILE");
    app->add_flag ("--zigzag", zigzag_, "Resistors as zig-zag lines instead of rectangles");
    app->footer (footer);
}

Card DrawingCommand::card() const
{
    if (documentKind (document_) != "instrument")
    {
        if (! stop_.empty())
            throw Error (document_.string() + ": a card is one stop already; leave --stop out, or name an instrument.");
        return readCard (document_);
    }
    if (stop_.empty())
        throw Error (document_.string() + ": of an instrument one stop is drawn; name it with --stop.");
    const auto instrument = readInstrument (document_);
    const auto stop = std::ranges::find (instrument.stops, stop_, &StopTablet::name);
    if (stop == instrument.stops.end())
        refuseStop (instrument, stop_);
    if (stop->cardFile.empty())
        throw Error ("The tablet \"" + stop_ + "\" is blank: it has no card to draw. Name a stop that has one.");
    return readCard (cardPath (document_, stop->cardFile));
}

ExitStatus DrawingCommand::run (std::ostream& out, std::ostream& /*err*/)
{
    const auto drawn = card();
    const SchematicStyle style { .resistor = zigzag_ ? ResistorSign::zigzag : ResistorSign::rectangle,
                                 .markedItem = {},
                                 .markedNode = {} };
    writeDocumentFile (svgText (drawSchematic (drawn, layOutSchematic (drawn), style)), output_);
    out << output_.string() << '\n';
    return ExitStatus::success;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CheckCommand.h"

#include "Command/CardReport.h"
#include "Command/InstrumentReport.h"
#include "Command/MaskReport.h"
#include "Organ/CardDocument.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/MaskDocument.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <ostream>

namespace stopwright
{

namespace
{

constexpr const char* footer =
    "An instrument is checked together with the cards that it names. Warnings leave the exit status at 0.\n"
    "Examples:\n"
    "  stopwright check Presets/Krummhorn8.json\n"
    "  stopwright check Presets/LarkfieldOrgan.json\n"
    "  stopwright check Presets/Masks/OboeFormants.json";

ExitStatus report (const DocumentReport& report, std::ostream& out, std::ostream& err)
{
    if (! report.errors.empty())
    {
        for (const auto& sentence : report.errors)
            err << "stopwright: " << sentence << '\n';
        return ExitStatus::badInput;
    }
    out << report.description;
    for (const auto& sentence : report.warnings)
        out << "warning: " << sentence << '\n';
    return ExitStatus::success;
}

} // namespace

void CheckCommand::declare (CLI::App& program)
{
    auto* const app = program.add_subcommand (name(), "Say what a document is, or what is wrong with it and where");
    app->add_option ("FILE", file_, "A stop card, an instrument or a mask")->required()->type_name ("FILE");
    app->footer (footer);
}

ExitStatus CheckCommand::run (std::ostream& out, std::ostream& err)
{
    const auto kind = documentKind (file_);
    if (kind == "instrument")
        return report (reportOf (readInstrument (file_), file_), out, err);
    if (kind == "mask")
        return report (reportOf (readMask (file_), file_), out, err);
    return report (reportOf (readCard (file_), file_), out, err);
}

} // namespace stopwright

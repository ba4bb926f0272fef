// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/HeadroomWords.h"

#include "Command/NumberText.h"
#include "Command/TextTable.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Units/CsvCell.h"
#include "Units/Decibels.h"
#include "Units/Engineering.h"

#include <cmath>
#include <limits>
#include <ostream>

namespace stopwright
{

namespace
{

using Kind = HeadroomRemedy::Kind;

const char* wordOf (StageRole role)
{
    switch (role)
    {
        case StageRole::passiveBus:
            return "passive bus";
        case StageRole::busAmplifier:
            return "virtual earth";
        case StageRole::amplifier:
            return "amplifier";
        case StageRole::follower:
            return "follower";
        case StageRole::circuit:
            break;
    }
    return "circuit";
}

std::string nameOf (const std::string& name)
{
    return printable (name, DocumentLimits::titleCharacters);
}

std::string titleOf (const std::string& name, const std::string& preamp)
{
    return preamp.empty() ? nameOf (name) : nameOf (preamp) + ": " + nameOf (name);
}

/// dB by which the peak is above the rms; infinite where nothing sounds.
double crestDb (const StageHeadroom& stage)
{
    return stage.rmsVolts > 0.0 ? toDecibels (stage.peakVolts() / stage.rmsVolts)
                                : std::numeric_limits<double>::infinity();
}

double percent (double share)
{
    constexpr double whole = 100.0;
    return whole * share;
}

/// What is infinite has no limit or no sound, and no cell either.
std::string finiteCell (double value)
{
    return std::isfinite (value) ? csvNumber (value) : std::string();
}

std::string percentCell (double share, double limit)
{
    return std::isfinite (limit) ? csvNumber (percent (share)) : std::string();
}

std::string finiteWords (double value, int decimals)
{
    return std::isfinite (value) ? fixedNumber (value, decimals) : "-";
}

std::string percentWords (double share, double limit)
{
    constexpr int decimals = 3;
    return std::isfinite (limit) ? fixedNumber (percent (share), decimals) : "-";
}

std::string limitWords (SupplyRails limits)
{
    if (! std::isfinite (limits.low) && ! std::isfinite (limits.high))
        return "none";
    return finiteWords (limits.low, 2) + " " + finiteWords (limits.high, 2);
}

std::string wantedCell (const StageHeadroom& stage, Kind kind)
{
    for (const HeadroomRemedy& remedy : stage.remedies)
        if (remedy.kind == kind)
            return csvNumber (remedy.wanted);
    return {};
}

std::string ohms (double value)
{
    return formatForReading (value, Quantity::resistance);
}

std::string sentenceOf (const HeadroomRemedy& remedy)
{
    constexpr int digits = 4; // a four-digit value is within 0.005 dB of the margin
    constexpr int decimals = 4;
    const auto exactly = [] (double value, Quantity quantity) { return formatForReading (value, quantity, digits); };
    switch (remedy.kind)
    {
        case Kind::feedbackOhms:
            return "feedback resistor " + exactly (remedy.wanted, Quantity::resistance) + " instead of "
                   + ohms (remedy.now);
        case Kind::gain:
            return "gain " + fixedNumber (remedy.wanted, decimals) + " instead of " + numberText (remedy.now);
        case Kind::seriesOhms:
            return exactly (remedy.wanted, Quantity::resistance) + " in series with its input";
        case Kind::emitterAmps:
            break;
    }
    return "standing current " + exactly (remedy.wanted, Quantity::current) + " instead of "
           + formatForReading (remedy.now, Quantity::current);
}

std::string driveCells (const InputDrive& drive)
{
    return csvNumber (drive.peakVolts) + ',' + csvNumber (drive.sourceOhms);
}

std::string amps (double value)
{
    return value == 0.0 ? "0" : formatForReading (value, Quantity::current);
}

} // namespace

void printHeadroomCsv (const std::vector<StageHeadroom>& stages, std::ostream& out)
{
    out << headroomCsvHeader << '\n';
    for (const StageHeadroom& stage : stages)
    {
        out << csvCell (stage.name) << ',' << csvCell (stage.preamp) << ',' << wordOf (stage.role);
        for (const double value : { stage.limits.low, stage.limits.high })
            out << ',' << finiteCell (value);
        for (const double value : { stage.lowestVolts, stage.highestVolts, stage.rmsVolts })
            out << ',' << csvNumber (value);
        out << ',' << finiteCell (crestDb (stage)) << ',' << percentCell (stage.shareBelow, stage.limits.low) << ','
            << percentCell (stage.shareAbove, stage.limits.high) << ',' << csvNumber (stage.exceededVolts) << ','
            << finiteCell (stage.roomDb) << ',' << finiteCell (stage.roomAtShareDb);
        for (const Kind kind : { Kind::feedbackOhms, Kind::gain, Kind::seriesOhms, Kind::emitterAmps })
            out << ',' << wantedCell (stage, kind);
        out << '\n';
    }
}

void printHeadroomTable (const std::vector<StageHeadroom>& stages, double exceededPercent, std::ostream& out)
{
    const std::string share = csvNumber (exceededPercent) + " %";
    TextTable table ({ "stage", "", "limits V", "peak V", "rms V", "% below", "% above", "over " + share + " of time V",
                       "room dB", "room at " + share + " dB" });
    for (const StageHeadroom& stage : stages)
        table.addRow ({ titleOf (stage.name, stage.preamp), wordOf (stage.role), limitWords (stage.limits),
                        fixedNumber (stage.lowestVolts, 3) + " " + fixedNumber (stage.highestVolts, 3),
                        fixedNumber (stage.rmsVolts, 4), percentWords (stage.shareBelow, stage.limits.low),
                        percentWords (stage.shareAbove, stage.limits.high), fixedNumber (stage.exceededVolts, 3),
                        finiteWords (stage.roomDb, 2), finiteWords (stage.roomAtShareDb, 2) });
    table.print (out);
}

void printHeadroomAdvice (const std::vector<StageHeadroom>& stages, double marginDb, std::ostream& out)
{
    if (const auto first = firstToClip (stages))
    {
        const StageHeadroom& stage = stages[*first];
        out << (stage.roomDb < 0.0 ? "First to clip, and it does: " : "Nothing clips; the first to would be ")
            << titleOf (stage.name, stage.preamp) << ", " << fixedNumber (stage.roomDb, 2)
            << " dB of room by its peak bound.\n";
    }
    else
        out << "No stage that gets anything states a limit, so none clips; give rails to those that have them.\n";
    for (const StageHeadroom& one : stages)
        for (const HeadroomRemedy& remedy : one.remedies)
            out << "For " << csvNumber (marginDb) << " dB at " << titleOf (one.name, one.preamp) << ": "
                << sentenceOf (remedy) << ".\n";
    out << "As in the sound, a stage's input resistance is no load of its own: the loadOhms of a passive bus is taken to "
           "hold it.\n";
}

void printInputsCsv (const std::vector<InputReading>& readings, std::ostream& out)
{
    out << inputsCsvHeader << '\n';
    for (const InputReading& reading : readings)
    {
        out << csvCell (reading.name) << ',' << csvCell (reading.preamp) << ',' << driveCells (reading.on) << ','
            << csvNumber (reading.stress.ampsOn) << ',' << csvNumber (reading.stress.seriesOhmsOn) << ',';
        if (reading.off)
            out << driveCells (*reading.off) << ',' << csvNumber (reading.stress.ampsOff) << ','
                << csvNumber (reading.stress.seriesOhmsOff) << '\n';
        else
            out << ",,,\n";
    }
}

void printInputsTable (const std::vector<InputReading>& readings, std::ostream& out)
{
    TextTable table ({ "input", "supplies", "peak V", "source", "into the pin", "wanted in series" });
    for (const InputReading& reading : readings)
    {
        const auto title = titleOf (reading.name, reading.preamp);
        table.addRow ({ title, "on", fixedNumber (reading.on.peakVolts, 3), ohms (reading.on.sourceOhms),
                        amps (reading.stress.ampsOn), ohms (reading.stress.seriesOhmsOn) });
        if (reading.off)
            table.addRow ({ title, "off", fixedNumber (reading.off->peakVolts, 3), ohms (reading.off->sourceOhms),
                            amps (reading.stress.ampsOff), ohms (reading.stress.seriesOhmsOff) });
    }
    table.print (out);
}

} // namespace stopwright

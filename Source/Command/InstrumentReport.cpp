// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/InstrumentReport.h"

#include "Command/CardReport.h"
#include "Command/NumberText.h"
#include "Organ/CardDocument.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Organ/UnknownFields.h"
#include "Units/Engineering.h"
#include "Units/Pitch.h"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace stopwright
{

namespace
{

/// Largest departures from equal temperament at A4 = 440 Hz over the twelve notes.
std::string centsWords (const Tuning& tuning)
{
    constexpr int middleC = 60;
    constexpr int notes = 12;
    double flattest = 0.0;
    double sharpest = 0.0;
    for (int key = middleC; key < middleC + notes; ++key)
    {
        const double cents = centsBetween (equalTemperedHz (key), tuning.keyHz (key));
        flattest = key == middleC ? cents : std::min (flattest, cents);
        sharpest = key == middleC ? cents : std::max (sharpest, cents);
    }
    return fixedNumber (flattest, 2) + " to " + (sharpest < 0.0 ? "" : "+") + fixedNumber (sharpest, 2)
           + " cents re equal temperament at A4 = 440 Hz";
}

std::string tuningWords (const TuningStatement& statement)
{
    constexpr int digits = 6;
    const auto masters =
        statement.kind == TuningKind::topOctave
            ? "12 generators from one clock of " + formatForReading (statement.clockHz, Quantity::frequency, digits)
            : "equal temperament at A4 = " + formatForReading (statement.referenceHz, Quantity::frequency, digits);
    return masters + ", highest generator " + keyName (statement.highestKey)
           + (statement.top == TopBehaviour::silent ? ", silent above it" : ", breaking back above it");
}

std::string keysWords (const Division& division)
{
    const int keys = division.highestKey - division.lowestKey + 1;
    return counted (static_cast<std::size_t> (keys), "key") + ", " + keyName (division.lowestKey) + " to "
           + keyName (division.highestKey);
}

std::string describe (const Instrument& instrument, const Tuning& tuning, const std::filesystem::path& file)
{
    std::ostringstream text;
    text << file.string() << ": instrument \"" << printable (instrument.name, DocumentLimits::titleCharacters)
         << "\", sound\n"
         << "  tuning    " << tuningWords (instrument.tuning) << '\n'
         << "            " << centsWords (tuning) << '\n';
    for (const auto& division : instrument.divisions)
        text << "  division  " << division.name << ": " << keysWords (division) << '\n';
    for (const auto& bus : instrument.keyedBuses)
        text << "  bus       " << bus.name << ": "
             << waveWords (bus.wave, bus.footage, bus.voltsPeakToPeak, bus.sourceOhms) << '\n';
    for (const auto& stop : instrument.stops)
        text << "  tablet    " << stop.name << " (" << stop.division
             << "): " << (stop.cardFile.empty() ? "blank" : stop.cardFile) << (stop.proposed ? ", proposed" : "")
             << '\n';
    return text.str();
}

bool isOnABus (const Tap& tap, const std::vector<KeyedBus>& buses)
{
    return std::any_of (buses.begin(), buses.end(),
                        [&tap] (const KeyedBus& bus) { return bus.wave == tap.wave && bus.footage == tap.footage; });
}

void appendCard (const StopTablet& stop,
                 const Instrument& instrument,
                 const std::filesystem::path& file,
                 DocumentReport& report)
{
    const auto cardFile = file.parent_path() / stop.cardFile;
    try
    {
        const auto card = readCard (cardFile);
        auto found = reportOf (card, cardFile);
        std::move (found.errors.begin(), found.errors.end(), std::back_inserter (report.errors));
        std::move (found.warnings.begin(), found.warnings.end(), std::back_inserter (report.warnings));
        for (const auto& tap : card.taps)
            if (! isOnABus (tap, instrument.keyedBuses))
                report.warnings.push_back (cardFile.string() + ": tap " + tap.name
                                           + " takes a wave that no keyed bus of " + instrument.name
                                           + " carries; choose a bus, or add one to the instrument.");
    }
    catch (const Error& fault)
    {
        report.errors.push_back (std::string (fault.what()) + " (the card of tablet " + stop.name + ")");
    }
}

} // namespace

DocumentReport reportOf (const Instrument& instrument, const std::filesystem::path& file)
{
    DocumentReport report;
    const auto prefix = file.string() + ": ";
    try
    {
        const auto tuning = tuningOf (instrument.tuning, {});
        report.description = describe (instrument, tuning, file);
    }
    catch (const Error& fault)
    {
        report.errors.push_back (prefix + fault.what());
    }

    for (const auto& field : listUnknownFields (instrument.unknownFields))
        report.warnings.push_back (prefix + field.sentence);
    for (const auto& stop : instrument.stops)
        if (! stop.cardFile.empty())
            appendCard (stop, instrument, file, report);
    return report;
}

} // namespace stopwright

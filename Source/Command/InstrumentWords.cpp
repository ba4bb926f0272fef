// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/InstrumentWords.h"

#include "Command/CardReport.h"
#include "Command/NumberText.h"
#include "Command/SignalPathWords.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Organ/WaveWords.h"
#include "Units/Engineering.h"
#include "Units/Pitch.h"

#include <algorithm>
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
           + keyName (division.highestKey)
           + (division.midiChannel ? ", MIDI channel " + std::to_string (*division.midiChannel) : "");
}

std::string keyerWords (const KeyerSettings& keyer)
{
    if (keyer.shape == KeyerShape::contact)
        return "hard contact";
    return std::string (keyer.shape == KeyerShape::rc ? "exponential" : "linear") + " keyer, "
           + formatForReading (keyer.attackSeconds, Quantity::time) + " up and "
           + formatForReading (keyer.releaseSeconds, Quantity::time) + " down";
}

std::string keyedBusWords (const KeyedBus& bus)
{
    auto words = waveWords (waveSourceOf (bus));
    if (bus.collectorOhms)
        words += ", keys through " + formatForReading (*bus.collectorOhms, Quantity::resistance) + " each into "
                 + formatForReading (bus.loadOhms, Quantity::resistance);
    if (bus.keyer)
        words += ", " + keyerWords (*bus.keyer);
    return words;
}

std::string contactsWords (const Instrument& instrument)
{
    const auto& contacts = instrument.contacts;
    if (contacts.staggerSeconds == 0.0 || contacts.order.empty())
        return "all close at once";
    std::string words;
    for (const auto& bus : contacts.order)
        words += bus + ", ";
    return words + formatForReading (contacts.staggerSeconds, Quantity::time) + " apart"
           + (contacts.order.size() < instrument.keyedBuses.size() ? ", the others with the last" : "");
}

std::string tabletWords (const StopTablet& stop)
{
    auto words = stop.name + " (" + stop.division + "): " + (stop.cardFile.empty() ? "blank" : stop.cardFile)
                 + (stop.proposed ? ", proposed" : "") + (stop.drawn ? ", drawn" : "");
    if (! stop.bus.empty())
        words += ", " + formatForReading (stop.mixingOhms, Quantity::resistance) + " to " + stop.bus
                 + (stop.polarity < 0 ? ", polarity reversed" : "")
                 + (stop.whenRetired == WhenRetired::open ? ", open when retired" : ", grounded when retired");
    return words;
}

std::string couplerWords (const Coupler& coupler)
{
    return coupler.name + ": keys of " + coupler.from + " play " + coupler.to
           + (coupler.octaves > 0   ? " an octave higher"
              : coupler.octaves < 0 ? " an octave lower"
                                    : "")
           + (coupler.drawn ? ", drawn" : "");
}

} // namespace

std::string describe (const Instrument& instrument, const std::filesystem::path& file)
{
    std::ostringstream text;
    text << file.string() << ": instrument \"" << printable (instrument.name, DocumentLimits::titleCharacters)
         << "\", sound\n"
         << "  tuning      " << tuningWords (instrument.tuning) << '\n'
         << "              " << centsWords (tuningOf (instrument.tuning, {})) << '\n';
    for (const auto& division : instrument.divisions)
        text << "  division    " << division.name << ": " << keysWords (division) << '\n';
    for (const auto& bus : instrument.keyedBuses)
        text << "  keyed bus   " << bus.name << ": " << keyedBusWords (bus) << '\n';
    text << "  contacts    " << contactsWords (instrument) << '\n';
    for (const auto& bus : instrument.mixingBuses)
        text << "  mixing bus  " << mixingBusWords (bus) << '\n';
    for (const auto& preamp : instrument.preamps)
    {
        text << "  preamp      " << preamp.name << ": from " << preamp.bus << " to " << preamp.outlet << '\n';
        for (const auto& stage : preamp.stages)
            text << "              " << stageWords (stage) << '\n';
    }
    for (const auto& outlet : instrument.outlets)
        text << "  outlet      " << outletWords (outlet) << '\n';
    for (const auto& coupler : instrument.couplers)
        text << "  coupler     " << couplerWords (coupler) << '\n';
    for (const auto& stop : instrument.stops)
        text << "  tablet      " << tabletWords (stop) << '\n';
    return text.str();
}

} // namespace stopwright

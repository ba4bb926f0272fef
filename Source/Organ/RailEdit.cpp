// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/RailEdit.h"

#include "Circuit/FindingWords.h"
#include "Organ/Alter.h"
#include "Organ/AsFoundFields.h"
#include "Organ/DocumentLimits.h"
#include "Organ/NamedItem.h"
#include "Organ/PlainText.h"
#include "Organ/StopFields.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <filesystem>

namespace stopwright
{

namespace
{

StopTablet& tabletNamed (Instrument& instrument, std::string_view tablet)
{
    return itemNamed (instrument.stops, "tablet", inThisInstrument, tablet);
}

/// Drops asFound once nothing in it is left.
void tidy (Instrument& instrument, StopTablet& stop)
{
    if (! stop.asFound)
        return;
    const auto& found = *stop.asFound;
    if (found.bus || found.mixingOhms || found.whenRetired || found.polarity || found.division || found.cardFile)
        return;
    stop.asFound.reset();
    instrument.unknownFields.erase (std::string (stopAsFound) + ":" + stop.name);
}

template <typename Value>
Instrument altered (Instrument instrument,
                    std::string_view tablet,
                    Value StopTablet::*member,
                    const Value& to,
                    std::optional<Value> AsFoundStop::*field)
{
    auto& stop = tabletNamed (instrument, tablet);
    if (alter (stop.*member, to, stop.asFound, field))
        tidy (instrument, stop);
    return instrument;
}

/// As the reader of documents and cardPath want it.
void requireCardFile (const std::string& cardFile)
{
    if (firstByteNotUtf8 (cardFile) != std::string::npos || cardFile.find ('\0') != std::string::npos
        || characterCount (cardFile) > DocumentLimits::pathCharacters)
        throw Error ("The file name " + quotedText (cardFile) + " cannot stand in a document; give the card another.");
    const auto path = std::filesystem::path (cardFile).lexically_normal();
    if (path.is_absolute() || (! path.empty() && *path.begin() == ".."))
        throw Error ("The card " + quotedText (cardFile)
                     + " lies outside the folder of the instrument; copy it into that folder and name it from there.");
}

} // namespace

Instrument moveStopToBus (Instrument instrument, std::string_view tablet, const std::string& bus)
{
    if (! bus.empty())
        itemNamed (instrument.mixingBuses, "mixing bus", inThisInstrument, bus);
    return altered (std::move (instrument), tablet, &StopTablet::bus, bus, &AsFoundStop::bus);
}

Instrument setMixing (Instrument instrument, std::string_view tablet, double ohms)
{
    const auto& stop = tabletNamed (instrument, tablet);
    const auto words = [] (double value) { return formatForReading (value, Quantity::resistance); };
    if (! mixingRange.contains (ohms))
        throw Error ("The mixing resistor of " + partWords (stop.name) + " cannot be " + words (ohms) + "; give it "
                     + words (mixingRange.lowest) + " to " + words (mixingRange.highest) + ".");
    return altered (std::move (instrument), tablet, &StopTablet::mixingOhms, ohms, &AsFoundStop::mixingOhms);
}

Instrument setRetired (Instrument instrument, std::string_view tablet, WhenRetired whenRetired)
{
    return altered (std::move (instrument), tablet, &StopTablet::whenRetired, whenRetired, &AsFoundStop::whenRetired);
}

Instrument setPolarity (Instrument instrument, std::string_view tablet, int polarity)
{
    requirePolarity (tablet, polarity);
    return altered (std::move (instrument), tablet, &StopTablet::polarity, polarity, &AsFoundStop::polarity);
}

Instrument setDivision (Instrument instrument, std::string_view tablet, const std::string& division)
{
    itemNamed (instrument.divisions, "division", inThisInstrument, division);
    return altered (std::move (instrument), tablet, &StopTablet::division, division, &AsFoundStop::division);
}

Instrument giveCard (Instrument instrument, std::string_view tablet, const std::string& cardFile)
{
    requireCardFile (cardFile);
    return altered (std::move (instrument), tablet, &StopTablet::cardFile, cardFile, &AsFoundStop::cardFile);
}

Instrument noteAlteration (Instrument instrument, std::string_view tablet, const AlterationNote& note)
{
    auto& stop = tabletNamed (instrument, tablet);
    requireHeld (note);
    if (! stop.asFound)
        throw Error ("Tablet " + partWords (stop.name) + " is as it was found, so there is nothing to note yet.");
    stop.asFound->note = note;
    return instrument;
}

} // namespace stopwright

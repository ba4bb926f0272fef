// SPDX-License-Identifier: GPL-3.0-or-later
//
// The part of BenchSession that plays the instrument: its cards, tablets, couplers and outlet switches.
#include "Bench/BenchSession.h"

#include "Circuit/NetlistCheck.h"
#include "Command/InstrumentSelection.h"
#include "Organ/InstrumentDocument.h"
#include "Units/Error.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

template <typename Item>
Item& itemOf (std::vector<Item>& items, int index)
{
    if (index < 0 || static_cast<std::size_t> (index) >= items.size())
        throw Error ("There is no such tablet in the open instrument; choose one of the list.");
    return items[static_cast<std::size_t> (index)];
}

bool hasBus (const Instrument& instrument, const StopTablet& stop)
{
    return instrument.mixingBuses.empty()
           || std::ranges::find (instrument.mixingBuses, stop.bus, &MixingBus::name) != instrument.mixingBuses.end();
}

} // namespace

/// The cards of the instrument's other stops; those that cannot be computed are left out, with a sentence.
InstrumentCards BenchSession::cardsThatSound (const BenchDocument& document)
{
    if (! document.instrument)
        return {};
    const auto& stops = document.instrument->stops;
    auto cards = findInstrumentCards (*document.instrument, document.instrumentFile);
    for (std::size_t index = 0; index < stops.size(); ++index)
    {
        if (! cards.ofStops[index] || static_cast<int> (index) == document.stopIndex)
            continue;
        try
        {
            requireSound (netlistOf (*cards.ofStops[index]));
        }
        catch (const Error& error)
        {
            cards.errors.push_back (stops[index].cardFile + ": " + error.what());
            cards.ofStops[index].reset();
        }
    }
    return cards;
}

std::string BenchSession::openingNote() const
{
    const auto& errors = cards_.errors;
    if (errors.empty())
        return {};
    if (errors.size() == 1)
        return errors.front();
    return errors.front() + " And " + std::to_string (errors.size() - 1) + " more that cannot sound.";
}

void BenchSession::play (const BenchDocument& document, const InstrumentCards& cards, bool newReference)
{
    const auto* const stop = document.stopInHand();
    if (stop == nullptr)
    {
        processor_.playCard (document.card, document.keySource(), newReference);
        return;
    }
    auto played = cards;
    played.ofStops[static_cast<std::size_t> (document.stopIndex)] = document.card;
    processor_.playInstrument (*document.instrument, played, stop->name, newReference);
}

/// Into the document as it stands on disk, which somebody may have changed meanwhile.
void BenchSession::saveMixing()
{
    const auto* const inHand = document_.stopInHand();
    auto instrument = readInstrument (document_.instrumentFile);
    const auto stop = std::ranges::find (instrument.stops, inHand->name, &StopTablet::name);
    if (stop == instrument.stops.end())
        throw Error (document_.instrumentFile.filename().string() + " has no tablet \"" + inHand->name
                     + "\" any more, so its mixing resistor was not saved; open the instrument again.");
    stop->mixingOhms = inHand->mixingOhms;
    writeInstrument (instrument, document_.instrumentFile);
    document_.savedMixingOhms = inHand->mixingOhms;
}

/// What was saved is what every tablet with the same card file plays from now on.
void BenchSession::shareSavedCard()
{
    const auto* const inHand = document_.stopInHand();
    if (inHand == nullptr || document_.cardFile != cardPath (document_.instrumentFile, inHand->cardFile))
        return;
    bool isShared = false;
    const auto& stops = document_.instrument->stops;
    for (std::size_t index = 0; index < stops.size(); ++index)
    {
        if (stops[index].cardFile != inHand->cardFile)
            continue;
        cards_.ofStops[index] = document_.card;
        isShared = isShared || static_cast<int> (index) != document_.stopIndex;
    }
    if (isShared)
        play (document_, cards_, false);
}

bool BenchSession::canSound (int stop) const
{
    const auto index = static_cast<std::size_t> (stop);
    return document_.instrument && stop >= 0 && index < cards_.ofStops.size()
           && (cards_.ofStops[index] || stop == document_.stopIndex)
           && hasBus (*document_.instrument, document_.instrument->stops[index]);
}

void BenchSession::draw (int stop, bool isDrawn)
{
    if (! document_.instrument)
        return;
    auto& tablet = itemOf (document_.instrument->stops, stop);
    if (tablet.cardFile.empty())
        throw Error ("The tablet \"" + tablet.name
                     + "\" is blank: it has no card to sound. Name a card file at it in the instrument's document.");
    if (! canSound (stop))
        throw Error (
            hasBus (*document_.instrument, tablet)
                ? "The stop \"" + tablet.name + "\" cannot sound: its card " + tablet.cardFile
                      + " cannot be used. Open that card to read why."
                : "The stop \"" + tablet.name
                      + "\" cannot sound: it is on no mixing bus. Name one at it in the instrument's document.");
    processor_.engine().draw (tablet.name, isDrawn);
    tablet.drawn = isDrawn;
    notify (Change::registration);
}

void BenchSession::drawCoupler (int coupler, bool isDrawn)
{
    if (! document_.instrument)
        return;
    auto& tablet = itemOf (document_.instrument->couplers, coupler);
    processor_.engine().drawCoupler (tablet.name, isDrawn);
    tablet.drawn = isDrawn;
    notify (Change::registration);
}

void BenchSession::switchOutlet (int outlet, bool isOn)
{
    if (! document_.instrument)
        return;
    auto& item = itemOf (document_.instrument->outlets, outlet);
    processor_.engine().switchOutlet (item.name, isOn);
    item.isOn = isOn;
    notify (Change::registration);
}

void BenchSession::retireAll()
{
    if (! document_.instrument)
        return;
    for (auto& stop : document_.instrument->stops)
    {
        if (std::exchange (stop.drawn, false))
            processor_.engine().draw (stop.name, false);
    }
    for (auto& coupler : document_.instrument->couplers)
    {
        if (std::exchange (coupler.drawn, false))
            processor_.engine().drawCoupler (coupler.name, false);
    }
    notify (Change::registration);
}

void BenchSession::drawOnly (const std::vector<std::string>& tablets)
{
    if (! document_.instrument)
        throw Error ("A card alone has no tablets to draw; leave out --stops, or open an instrument.");
    auto wanted = *document_.instrument;
    stopwright::drawOnly (wanted, tablets);
    retireAll();
    for (std::size_t index = 0; index < wanted.stops.size(); ++index)
        if (const int stop = static_cast<int> (index); wanted.stops[index].drawn && canSound (stop))
            draw (stop, true);
    for (std::size_t index = 0; index < wanted.couplers.size(); ++index)
        if (wanted.couplers[index].drawn)
            drawCoupler (static_cast<int> (index), true);
}

} // namespace stopwright

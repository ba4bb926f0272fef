// SPDX-License-Identifier: GPL-3.0-or-later
//
// The part of BenchSession that plays the instrument: tablets, couplers and outlet switches.
#include "Bench/BenchSession.h"

#include "Command/InstrumentSelection.h"
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

} // namespace

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
    player_.noteRegistration (document_);
    notify (Change::registration);
}

void BenchSession::drawCoupler (int coupler, bool isDrawn)
{
    if (! document_.instrument)
        return;
    auto& tablet = itemOf (document_.instrument->couplers, coupler);
    processor_.engine().drawCoupler (tablet.name, isDrawn);
    tablet.drawn = isDrawn;
    player_.noteRegistration (document_);
    notify (Change::registration);
}

void BenchSession::switchOutlet (int outlet, bool isOn)
{
    if (! document_.instrument)
        return;
    auto& item = itemOf (document_.instrument->outlets, outlet);
    processor_.engine().switchOutlet (item.name, isOn);
    item.isOn = isOn;
    player_.noteRegistration (document_);
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
    player_.noteRegistration (document_);
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

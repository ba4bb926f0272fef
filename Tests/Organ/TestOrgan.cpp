// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/TestOrgan.h"

#include "Organ/InstrumentDocument.h"

#include <algorithm>
#include <filesystem>

namespace stopwright::test
{

StopTablet& TestOrgan::add (const std::string& name,
                            const Card& card,
                            const std::string& division,
                            const std::string& bus,
                            double mixingOhms)
{
    StopTablet stop;
    stop.name = name;
    stop.division = division;
    stop.bus = bus;
    stop.mixingOhms = mixingOhms;
    stop.drawn = true;
    instrument.stops.push_back (stop);
    cards.ofStops.emplace_back (card);
    return instrument.stops.back();
}

StopTablet& TestOrgan::tablet (const std::string& name)
{
    return *std::ranges::find (instrument.stops, name, &StopTablet::name);
}

TestOrgan emptyOrgan (const MixingBus& bus)
{
    TestOrgan organ;
    organ.instrument.name = "Test";
    organ.instrument.divisions = { { "Upper", 36, 96, 1 }, { "Lower", 36, 96, 2 }, { "Pedal", 36, 65, 3 } };
    organ.instrument.mixingBuses.push_back (bus);
    organ.instrument.mixingBuses.back().name = "Bus";
    Outlet outlet;
    outlet.name = "Main";
    organ.instrument.outlets.push_back (outlet);
    Preamp preamp;
    preamp.name = "Preamp";
    preamp.bus = "Bus";
    preamp.outlet = "Main";
    organ.instrument.preamps.push_back (preamp);
    organ.cards.ofStages.emplace_back();
    return organ;
}

TestOrgan larkfield()
{
    const std::filesystem::path file = std::string (STOPWRIGHT_ROOT) + "/Presets/LarkfieldOrgan.json";
    TestOrgan organ;
    organ.instrument = readInstrument (file);
    organ.cards = instrumentCards (organ.instrument, file);
    return organ;
}

Card bareCard (const std::string& footage, double volts)
{
    Card card;
    card.name = "Bare " + footage;
    Tap tap;
    tap.name = "W";
    tap.footage = Footage::parse (footage);
    tap.voltsPeakToPeak = volts;
    tap.node = "a";
    card.taps.push_back (tap);
    card.output = "a";
    return card;
}

MixingBus passiveBus()
{
    MixingBus bus;
    bus.kind = BusKind::passive;
    return bus;
}

} // namespace stopwright::test

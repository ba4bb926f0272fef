// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/PlayableInstrument.h"

namespace stopwright
{

Instrument playableInstrument (Instrument instrument)
{
    if (! instrument.mixingBuses.empty())
        return instrument;
    instrument.mixingBuses.emplace_back();
    instrument.outlets.emplace_back();
    instrument.preamps.emplace_back();
    for (StopTablet& stop : instrument.stops)
        stop.bus.clear();
    return instrument;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StageReading.h"

#include "Units/Error.h"

#include <algorithm>
#include <array>

namespace stopwright
{

namespace
{

constexpr std::array tenNotes { 36, 43, 48, 52, 55, 60, 64, 67, 72, 76 };

std::vector<HeldKey> notesOn (const Instrument& instrument, const std::string& division)
{
    const auto found = std::ranges::find (instrument.divisions, division, &Division::name);
    std::vector<HeldKey> held;
    held.reserve (tenNotes.size());
    for (const int key : tenNotes)
        if (found != instrument.divisions.end() && key >= found->lowestKey && key <= found->highestKey)
            held.push_back ({ division, key });
    return held;
}

} // namespace

std::string titleOf (const StageHeadroom& stage)
{
    return stage.preamp.empty() ? stage.name : stage.preamp + ": " + stage.name;
}

StageReading stageReading (const Instrument& instrument,
                           const InstrumentCards& cards,
                           const std::string& division,
                           StageKeys keys,
                           const std::function<bool()>& isUnwanted)
{
    StageReading reading;
    reading.keys = keys;
    for (std::size_t index = 0; index < instrument.stops.size(); ++index)
    {
        const auto& stop = instrument.stops[index];
        if (! stop.drawn || index >= cards.ofStops.size() || ! cards.ofStops[index])
            continue;
        if (reading.division.empty() || stop.division == division)
            reading.division = stop.division;
        reading.drawn.push_back (stop.name);
    }
    if (reading.drawn.empty())
        throw Error ("No stop is drawn, so nothing drives the stages; draw one.");

    reading.held = keys == StageKeys::everyKey ? allKeysOf (instrument) : notesOn (instrument, reading.division);
    auto usable = cards;
    usable.errors.clear(); // what cannot sound is silent here as it is in the loudspeaker
    HeadroomRequest request;
    request.held = reading.held;
    reading.stages = headroomOf (instrument, usable, request, isUnwanted);
    return reading;
}

} // namespace stopwright

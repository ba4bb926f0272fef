// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/SilentStops.h"

#include <algorithm>
#include <optional>

namespace stopwright
{

namespace
{

bool hasGenerator (const Card& card, const Tuning& tuning, const std::vector<int>& keys)
{
    const auto isThere = [&] (const Tap& tap, int key) { return tuning.generatorFor (key, tap.footage).has_value(); };
    return std::ranges::any_of (card.taps, [&] (const Tap& tap)
                                { return std::ranges::any_of (keys, [&] (int key) { return isThere (tap, key); }); });
}

std::optional<Silence> silenceOf (const Instrument& instrument,
                                  const StopTablet& stop,
                                  const std::optional<Card>& card,
                                  const std::vector<std::vector<int>>& sounding)
{
    if (! card)
        return Silence::blank;
    if (stop.bus.empty())
        return Silence::onNoBus;
    const auto division = std::ranges::find (instrument.divisions, stop.division, &Division::name);
    const auto& keys = sounding[static_cast<std::size_t> (division - instrument.divisions.begin())];
    if (keys.empty())
        return Silence::noKey;
    if (! hasGenerator (*card, keySourceOf (instrument, stop.division, *card).tuning, keys))
        return Silence::noGenerator;
    return {};
}

} // namespace

std::vector<SilentStop>
    silentStops (const Instrument& instrument, const InstrumentCards& cards, const std::vector<HeldKey>& held)
{
    const auto sounding = soundingKeys (instrument, held);
    std::vector<SilentStop> silent;
    for (std::size_t stop = 0; stop < instrument.stops.size(); ++stop)
    {
        if (! instrument.stops[stop].drawn)
            continue;
        if (const auto why = silenceOf (instrument, instrument.stops[stop], cards.ofStops[stop], sounding))
            silent.push_back ({ stop, *why });
    }
    return silent;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BusWaves.h"

#include <algorithm>

namespace stopwright
{

std::vector<std::size_t> drawnStopsOn (const RailStudy& rail, std::size_t bus)
{
    std::vector<std::size_t> stops;
    for (std::size_t stop = 0; stop < rail.instrument().stops.size(); ++stop)
        if (rail.hasCard (stop) && rail.instrument().stops[stop].drawn && rail.busOf (stop) == bus)
            stops.push_back (stop);
    return stops;
}

BusWaves::BusWaves (const RailStudy& rail, std::size_t bus, const std::vector<std::vector<int>>& soundingKeys)
    : rail_ (rail),
      bus_ (bus),
      state_ (rail.asOpened())
{
    const auto& divisions = rail.instrument().divisions;
    for (const std::size_t stop : drawnStopsOn (rail, bus))
    {
        const auto division =
            std::ranges::find (divisions, rail.instrument().stops[stop].division, &Division::name) - divisions.begin();
        for (std::size_t tap = 0; tap < rail.card (stop).taps.size(); ++tap)
            addTap (stop, tap, soundingKeys[static_cast<std::size_t> (division)]);
    }
}

void BusWaves::addTap (std::size_t stop, std::size_t tap, const std::vector<int>& keys)
{
    if (keys.empty())
        return;
    curves_.push_back (std::make_unique<ResponseCurve> (
        [this, stop, tap] (double hz)
        {
            const auto& port = rail_.port (stop).at (hz);
            return port.tapGains[tap] * rail_.busOhms (bus_, state_, hz) / (port.ohms + state_.mixingOhms[stop]);
        }));
    const Tap& values = rail_.card (stop).taps[tap];
    const Tuning& tuning = rail_.keySource (stop).tuning;
    const double volts = values.voltsPeakToPeak * values.polarity * rail_.instrument().stops[stop].polarity;
    for (const int key : keys)
        if (const auto generator = tuning.generatorFor (key, values.footage))
            waves_.push_back ({ values.wave, *generator, &tuning, volts, curves_.back().get() });
}

} // namespace stopwright

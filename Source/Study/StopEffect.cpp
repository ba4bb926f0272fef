// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StopEffect.h"

#include <numeric>

namespace stopwright
{

std::vector<int> compassOf (const RailStudy& study, std::size_t stop)
{
    const KeySource& source = study.keySource (stop);
    std::vector<int> keys (static_cast<std::size_t> (source.highestKey - source.lowestKey + 1));
    std::iota (keys.begin(), keys.end(), source.lowestKey);
    return keys;
}

std::vector<OtherStopChange> changesByStop (const RailStudy& study, std::size_t added, const RailState& state)
{
    std::vector<OtherStopChange> changes;
    const auto bus = study.busOf (added);
    std::optional<BusSurroundings> around;
    if (bus)
        around.emplace (study, *bus, state, added);

    const double addedOhms = state.mixingOhms[added];
    for (std::size_t stop = 0; stop < state.stands.size(); ++stop)
    {
        if (stop == added || ! study.hasCard (stop))
            continue;
        OtherStopChange change;
        change.stop = stop;
        change.isOnTheSameBus = bus && study.busOf (stop) == bus;
        if (change.isOnTheSameBus)
        {
            const auto keys = compassOf (study, stop);
            const StopOnBus other (study, stop, state, &*around, keys);
            const auto against = [&] (StopStand stand) {
                return levelChange (other, keys, state.mixingOhms[stop], {}, { stand, addedOhms });
            };
            change.whenDrawn = against (StopStand::drawn);
            change.whenRetiredGrounded = against (StopStand::grounded);
        }
        changes.push_back (change);
    }
    return changes;
}

} // namespace stopwright

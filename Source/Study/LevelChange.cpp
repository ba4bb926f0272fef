// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/LevelChange.h"

#include "Units/Decibels.h"

#include <cmath>

namespace stopwright
{

LevelChange levelChange (const StopOnBus& stop,
                         std::span<const int> keys,
                         double mixingOhms,
                         const LeftOutStand& from,
                         const LeftOutStand& to)
{
    LevelChange change;
    double before = 0.0;
    double after = 0.0;
    for (std::size_t index = 0; index < keys.size(); ++index)
    {
        const double was = stop.power (index, mixingOhms, from).plain;
        const double is = stop.power (index, mixingOhms, to).plain;
        before += was;
        after += is;
        if (! (was > 0.0))
            continue;
        const double db = toDecibels (std::sqrt (is / was));
        if (! change.largestKey || std::abs (db) > std::abs (change.largestDb))
        {
            change.largestDb = db;
            change.largestKey = keys[index];
        }
    }
    if (before > 0.0)
        change.compassDb = toDecibels (std::sqrt (after / before));
    return change;
}

} // namespace stopwright

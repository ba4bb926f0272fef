// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StageLimits.h"

#include "Units/Decibels.h"

#include <algorithm>

namespace stopwright
{

double sinkVolts (double emitterAmps, double emitterOhms, double loadOhms) noexcept
{
    return emitterAmps * emitterOhms * loadOhms / (emitterOhms + loadOhms);
}

double peakRoomDb (double lowestVolts, double highestVolts, SupplyRails limits) noexcept
{
    return -toDecibels (std::max (lowestVolts / limits.low, highestVolts / limits.high));
}

SupplyRails limitsOf (const PreampStage& stage) noexcept
{
    if (stage.kind == StageKind::circuit)
        return noLimits;
    SupplyRails limits = stage.rails.value_or (noLimits);
    if (stage.kind == StageKind::follower)
        limits.low = std::max (limits.low, -sinkVolts (stage.emitterAmps, stage.emitterOhms, stage.loadOhms));
    return limits;
}

} // namespace stopwright

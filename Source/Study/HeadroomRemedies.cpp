// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/HeadroomRemedies.h"

#include "Units/Decibels.h"

#include <algorithm>
#include <limits>

namespace stopwright
{

namespace
{

using Kind = HeadroomRemedy::Kind;

double factorFor (const StageHeadroom& found, double marginDb)
{
    return fromDecibels (found.roomDb - marginDb);
}

/// The current that sinks what the stage needs, when its rails leave room for that.
std::optional<HeadroomRemedy> strongerCurrent (const StageHeadroom& found, const PreampStage& stage, double marginDb)
{
    constexpr double unlimited = std::numeric_limits<double>::infinity();
    const double spare = fromDecibels (marginDb);
    const SupplyRails rails = stage.rails.value_or (SupplyRails { -unlimited, unlimited });
    const double needed = -found.lowestVolts * spare;
    if (needed > -rails.low || found.highestVolts * spare > rails.high)
        return {};
    return HeadroomRemedy { Kind::emitterAmps, stage.emitterAmps,
                            needed / sinkVolts (1.0, stage.emitterOhms, stage.loadOhms) };
}

} // namespace

std::vector<HeadroomRemedy> remediesFor (const StageHeadroom& found, const MixingBus& bus, double marginDb)
{
    if (found.roomDb >= marginDb)
        return {};
    return { { Kind::feedbackOhms, bus.feedbackOhms, bus.feedbackOhms * factorFor (found, marginDb) } };
}

std::vector<HeadroomRemedy> remediesFor (const StageHeadroom& found, const PreampStage& stage, double marginDb)
{
    if (found.roomDb >= marginDb)
        return {};
    const double factor = factorFor (found, marginDb);
    std::vector<HeadroomRemedy> remedies;
    if (stage.kind == StageKind::amplifier)
        remedies.push_back ({ Kind::gain, stage.gain, stage.gain * factor });
    if (stage.coupling)
        remedies.push_back ({ Kind::seriesOhms, 0.0, stage.coupling->inputOhms * (1.0 / factor - 1.0) });
    if (stage.kind == StageKind::follower)
        if (const auto current = strongerCurrent (found, stage, marginDb))
            remedies.push_back (*current);
    return remedies;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/PolarityCheck.h"

#include "Study/RegistrationSum.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <array>

namespace stopwright
{

bool PolarityCheck::isTurnAdvised() const noexcept
{
    if (cancelledKeys == 0 || cancelledKeysTurned > cancelledKeys)
        return false;
    return cancelledKeysTurned < cancelledKeys || meanTurnedDb > meanSumDb;
}

PolarityAtKey polarityOf (const std::vector<RailPartial>& one, const std::vector<RailPartial>& other, int key)
{
    constexpr double faintDb = -40.0;
    auto turned = other;
    for (RailPartial& partial : turned)
        partial.volts = -partial.volts;
    const auto sum = addRegistration (std::array { one, other });
    const auto difference = addRegistration (std::array { one, turned });

    PolarityAtKey result;
    result.key = key;
    result.sumDb = sum.reStrongestDb();
    result.turnedDb = difference.reStrongestDb();
    double strongest = 0.0;
    for (const ToneLevel& tone : sum.tones)
        strongest = std::max (strongest, tone.strongestPeakVolts);
    for (const SharedPartial& partial : sum.partials)
    {
        if (partial.strongestPeakVolts < fromDecibels (faintDb) * strongest)
            continue;
        ++result.sharedCount;
        if (toDecibels (partial.sumPeakVolts / partial.strongestPeakVolts) < -cancelledDb)
            result.cancelledHarmonics.push_back (partial.harmonic);
    }
    return result;
}

PolarityCheck checkPolarity (const RailStudy& study, std::size_t one, std::size_t other, std::span<const int> keys)
{
    PolarityCheck check;
    const std::array pair { one, other };
    for (const int key : keys)
    {
        const auto tones = registrationTones (study, pair, std::array { key });
        if (tones.size() != pair.size() || ! (toneLevelOf (tones[0]).rmsVolts > 0.0)
            || ! (toneLevelOf (tones[1]).rmsVolts > 0.0))
            continue;
        check.keys.push_back (polarityOf (tones[0], tones[1], key));
        const PolarityAtKey& added = check.keys.back();
        check.cancelledKeys += added.isCancelled() ? 1U : 0U;
        check.cancelledKeysTurned += added.turnedDb < -cancelledDb ? 1U : 0U;
    }
    for (const PolarityAtKey& key : check.keys)
    {
        check.meanSumDb += key.sumDb / static_cast<double> (check.keys.size());
        check.meanTurnedDb += key.turnedDb / static_cast<double> (check.keys.size());
    }
    return check;
}

} // namespace stopwright

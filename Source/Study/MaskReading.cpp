// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/MaskReading.h"

#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stopwright
{

namespace
{

double strongestOf (const MaskedTone& tone)
{
    double strongest = 0.0;
    for (const auto& partial : tone.partials)
        strongest = std::max (strongest, partial.peakVolts);
    return strongest;
}

const MaskedPartial& nearest (const MaskedTone& tone, double frequencyHz)
{
    return *std::ranges::min_element (tone.partials, {},
                                      [frequencyHz] (const MaskedPartial& partial)
                                      { return std::abs (partial.frequencyHz - frequencyHz); });
}

/// What has to be added to a level as the fit tells it of a harmonic to have it re the strongest partial: the same for
/// every harmonic, so that the first that sounds tells it.
double shiftOf (const MaskFit& fit, std::size_t harmonics, const MaskedTone& tone)
{
    for (const auto& entry : fit.entries)
        if (entry.entry < harmonics && std::isfinite (entry.levelDb))
            return toDecibels (nearest (tone, entry.frequencyHz).peakVolts / strongestOf (tone)) - entry.levelDb;
    return 0.0;
}

} // namespace

MaskReading maskReading (const TargetMask& mask, const MaskedTone& tone)
{
    MaskReading reading { mask.name, mask.certainty, mask.source, mask.isFor (tone.key), fitMask (mask, tone), {} };
    const auto harmonics = mask.harmonics.size();
    const double shiftDb = shiftOf (reading.fit, harmonics, tone);
    for (const auto& entry : reading.fit.entries)
    {
        if (entry.verdict == MaskVerdict::otherKeys || entry.verdict == MaskVerdict::aboveHearing)
            continue;
        MaskWindow window;
        window.fit = entry;
        window.isBand = entry.entry >= harmonics;
        if (window.isBand)
        {
            const auto& band = mask.bands[entry.entry - harmonics];
            window.name = band.name;
            window.lowestHz = band.centreHz - 0.5 * band.widthHz;
            window.highestHz = band.centreHz + 0.5 * band.widthHz;
            window.lowestDb = band.wish.levelDb - band.wish.toleranceDb;
            window.highestDb = band.wish.levelDb + band.wish.toleranceDb;
        }
        else
        {
            const auto& harmonic = mask.harmonics[entry.entry];
            window.name = std::string ("harmonic ").append (std::to_string (harmonic.harmonic));
            window.isBound = harmonic.atMost;
            window.lowestHz = window.highestHz = entry.frequencyHz;
            const double wantedDb = harmonic.wish.levelDb + shiftDb;
            window.highestDb = wantedDb + harmonic.wish.toleranceDb;
            window.lowestDb =
                window.isBound ? -std::numeric_limits<double>::infinity() : wantedDb - harmonic.wish.toleranceDb;
        }
        reading.windows.push_back (std::move (window));
    }
    return reading;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/TargetMask.h"
#include "Study/HarmonicTable.h"
#include "Study/RailStudy.h"

#include <cstddef>
#include <span>
#include <vector>

namespace stopwright
{

/// A partial as a mask looks at it: peak volts, harmonic counted from the key's 8 ft pitch.
struct MaskedPartial
{
    double harmonic = 0.0;
    double frequencyHz = 0.0;
    double peakVolts = 0.0;
};

/// A tone that is held against a mask: its key, the mask's harmonic 1 re the key's 8 ft pitch (see unisonRatio), that
/// pitch, and every partial up to 20 kHz; those the waves lack may stand there with zero.
struct MaskedTone
{
    int key = 60;
    double unisonRatio = 1.0;
    double keyHz = 261.6;
    std::vector<MaskedPartial> partials;
};

/// How one entry of a mask fares.
enum class MaskVerdict
{
    inside,
    tooStrong,
    tooWeak,
    absent,       ///< wanted, and the tone has nothing there
    aboveHearing, ///< its partial lies above 20 kHz: not compared
    noPartial,    ///< a band between two partials of this key: not compared
    otherKeys     ///< says nothing about this key: not compared
};

struct MaskEntryFit
{
    std::size_t entry = 0; ///< harmonics of the mask first, then its bands
    MaskVerdict verdict = MaskVerdict::otherKeys;
    double frequencyHz = 0.0; ///< of the partial, or of the strongest in a band; the band's centre when there is none
    double wantedDb = 0.0;    ///< as the mask has it
    double levelDb = 0.0;     ///< as found, the offset taken out; -infinity when absent
    double residualDb = 0.0;  ///< level - wanted
    double outsideDb = 0.0;   ///< what of it is beyond the tolerance; infinity when absent
};

/// One key of a stop against a mask. The best gain offset is taken out of the harmonics; bands need none, for they are
/// re the strongest partial by themselves. What is absent has no distance in dB and is counted instead.
struct MaskFit
{
    int key = 60;
    double offsetDb = 0.0; ///< of the levels as the mask counts them: re its first harmonic or the strongest partial
    double rmsDb = 0.0;    ///< of the residuals of all that has a level and a wish, upper bounds not among them
    double largestDb = 0.0;
    double rmsOutsideDb = 0.0; ///< of what is beyond the tolerances, upper bounds among it
    double largestOutsideDb = 0.0;
    int compared = 0;
    int outside = 0; ///< absent ones among them
    int absent = 0;
    std::vector<MaskEntryFit> entries; ///< one for each entry of the mask
};

/// Threading: [control].
MaskFit fitMask (const TargetMask& mask, const MaskedTone& tone);

/// The tone of a card, or of a stop on its rail, as a mask of that unison counts it. Threading: [control].
/// Fails: Error as harmonicTable and RailStudy::partials do.
MaskedTone toneOfCard (const Card& card, const KeySource& keySource, int key, const Footage& unison);
MaskedTone
    toneOfStop (const RailStudy& study, std::size_t stop, int key, const RailState& state, const Footage& unison);

/// A stop against a mask over its keys.
struct MaskSummary
{
    int keys = 0;       ///< on which anything was compared
    int keysInside = 0; ///< with nothing outside the tolerances
    double rmsDb = 0.0; ///< over the keys' rms
    double largestOutsideDb = 0.0;
    int keyOfLargest = -1; ///< where that is; -1 when nothing is outside by a number of dB
    int keysWithAbsent = 0;
};

/// Threading: [control].
MaskSummary summaryOf (std::span<const MaskFit> fits) noexcept;

} // namespace stopwright

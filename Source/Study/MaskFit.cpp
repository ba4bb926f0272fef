// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/MaskFit.h"

#include "Study/FootagePitch.h"
#include "Study/LevelFit.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace stopwright
{

namespace
{

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double highestHeardHz = 20000.0;

/// dB re the strongest: what is left below when amplitudes that cancel are added in double. Nothing heard is.
constexpr double absentBelowDb = -200.0;

class MaskComparison
{
public:
    MaskComparison (const TargetMask& mask, const MaskedTone& tone) : mask_ (mask), tone_ (tone)
    {
        for (const auto& partial : tone.partials)
            strongestVolts_ = std::max (strongestVolts_, partial.peakVolts);
        referenceDb_ = strongestVolts_ > 0.0 ? toDecibels (strongestVolts_) : 0.0;
        const auto* const first = find (1);
        if (mask.reference == MaskReference::first && first != nullptr && isThere (first->peakVolts))
            referenceDb_ = toDecibels (first->peakVolts);
    }

    MaskFit fit()
    {
        result_.key = tone_.key;
        for (std::size_t i = 0; i < mask_.harmonics.size(); ++i)
            addHarmonic (i);
        takeOffsetOut();
        for (std::size_t i = 0; i < mask_.bands.size(); ++i)
            addBand (i);
        judge();
        return std::move (result_);
    }

private:
    bool isThere (double volts) const { return volts > 0.0 && volts > strongestVolts_ * fromDecibels (absentBelowDb); }

    const MaskedPartial* find (int harmonic) const
    {
        const double wanted = harmonic * tone_.unisonRatio;
        const auto found =
            std::ranges::find_if (tone_.partials, [wanted] (const MaskedPartial& partial)
                                  { return std::abs (partial.harmonic - wanted) <= samePitchTolerance * wanted; });
        return found == tone_.partials.end() ? nullptr : &*found;
    }

    void addHarmonic (std::size_t index)
    {
        const MaskHarmonic& harmonic = mask_.harmonics[index];
        MaskEntryFit entry;
        entry.entry = index;
        entry.wantedDb = harmonic.wish.levelDb;
        entry.frequencyHz = harmonic.harmonic * tone_.unisonRatio * tone_.keyHz;
        entry.levelDb = -infinity;
        if (TargetMask::entryIsFor (harmonic.wish, tone_.key))
        {
            const auto* const partial = find (harmonic.harmonic);
            entry.verdict = entry.frequencyHz > highestHeardHz ? MaskVerdict::aboveHearing : MaskVerdict::absent;
            if (partial != nullptr && entry.verdict == MaskVerdict::absent && isThere (partial->peakVolts))
            {
                entry.verdict = MaskVerdict::inside;
                entry.levelDb = toDecibels (partial->peakVolts) - referenceDb_;
            }
        }
        result_.entries.push_back (entry);
    }

    void takeOffsetOut()
    {
        std::vector<double> wanted;
        std::vector<double> found;
        for (const auto& entry : result_.entries)
            if (entry.verdict == MaskVerdict::inside && ! mask_.harmonics[entry.entry].atMost)
            {
                wanted.push_back (entry.wantedDb);
                found.push_back (entry.levelDb);
            }
        result_.offsetDb = fitLevels (wanted, found).offsetDb;
        for (auto& entry : result_.entries)
            entry.levelDb -= result_.offsetDb;
    }

    void addBand (std::size_t index)
    {
        const MaskBand& band = mask_.bands[index];
        MaskEntryFit entry;
        entry.entry = mask_.harmonics.size() + index;
        entry.wantedDb = band.wish.levelDb;
        entry.frequencyHz = band.centreHz;
        entry.levelDb = -infinity;
        if (TargetMask::entryIsFor (band.wish, tone_.key))
        {
            entry.verdict = MaskVerdict::noPartial;
            double strongest = 0.0;
            for (const auto& partial : tone_.partials)
            {
                if (std::abs (partial.frequencyHz - band.centreHz) > 0.5 * band.widthHz)
                    continue;
                if (entry.verdict == MaskVerdict::noPartial)
                    entry.verdict = MaskVerdict::absent;
                if (! isThere (partial.peakVolts) || partial.peakVolts <= strongest)
                    continue;
                strongest = partial.peakVolts;
                entry.verdict = MaskVerdict::inside;
                entry.frequencyHz = partial.frequencyHz;
                entry.levelDb = toDecibels (strongest / strongestVolts_);
            }
        }
        result_.entries.push_back (entry);
    }

    /// Turns "there" into inside or outside, and adds up.
    void judge()
    {
        double square = 0.0;
        double outsideSquare = 0.0;
        int levels = 0;
        int finite = 0;
        for (auto& entry : result_.entries)
        {
            const bool isHarmonic = entry.entry < mask_.harmonics.size();
            const bool isBound = isHarmonic && mask_.harmonics[entry.entry].atMost;
            const MaskWish& wish =
                isHarmonic ? mask_.harmonics[entry.entry].wish : mask_.bands[entry.entry - mask_.harmonics.size()].wish;
            if (entry.verdict == MaskVerdict::absent && isBound)
                entry.verdict = MaskVerdict::inside;
            judge (entry, wish, isBound);
            if (entry.verdict > MaskVerdict::absent)
                continue;
            ++result_.compared;
            result_.outside += entry.verdict == MaskVerdict::inside ? 0 : 1;
            result_.absent += entry.verdict == MaskVerdict::absent ? 1 : 0;
            if (entry.verdict == MaskVerdict::absent)
                continue;
            ++finite;
            outsideSquare += entry.outsideDb * entry.outsideDb;
            result_.largestOutsideDb = std::max (result_.largestOutsideDb, entry.outsideDb);
            if (isBound)
                continue;
            ++levels;
            square += entry.residualDb * entry.residualDb;
            result_.largestDb = std::max (result_.largestDb, std::abs (entry.residualDb));
        }
        result_.rmsDb = levels == 0 ? 0.0 : std::sqrt (square / levels);
        result_.rmsOutsideDb = finite == 0 ? 0.0 : std::sqrt (outsideSquare / finite);
    }

    static void judge (MaskEntryFit& entry, const MaskWish& wish, bool isBound)
    {
        // A level that stands on the edge of its tolerance is within it, whatever the last digits of a sum say.
        constexpr double rounding = 1e-9;
        entry.residualDb = entry.levelDb - entry.wantedDb;
        if (entry.verdict == MaskVerdict::absent)
            entry.outsideDb = infinity;
        if (entry.verdict != MaskVerdict::inside)
            return;
        const double distance = isBound ? entry.residualDb : std::abs (entry.residualDb);
        if (distance <= wish.toleranceDb + rounding)
            return;
        entry.outsideDb = distance - wish.toleranceDb;
        entry.verdict = entry.residualDb > 0.0 ? MaskVerdict::tooStrong : MaskVerdict::tooWeak;
    }

    const TargetMask& mask_;
    const MaskedTone& tone_;
    double strongestVolts_ = 0.0;
    double referenceDb_ = 0.0;
    MaskFit result_;
};

} // namespace

MaskFit fitMask (const TargetMask& mask, const MaskedTone& tone)
{
    return MaskComparison (mask, tone).fit();
}

MaskedTone toneOfCard (const Card& card, const KeySource& keySource, int key, const Footage& unison)
{
    MaskedTone tone { key, unisonRatio (keySource.tuning, key, unison), keySource.tuning.keyHz (key), {} };
    for (const auto& row : harmonicTable (card, keySource, key))
        tone.partials.push_back ({ row.harmonic, row.frequencyHz, row.outputPeakVolts });
    return tone;
}

MaskedTone toneOfStop (const RailStudy& study, std::size_t stop, int key, const RailState& state, const Footage& unison)
{
    const Tuning& tuning = study.keySource (stop).tuning;
    MaskedTone tone { key, unisonRatio (tuning, key, unison), tuning.keyHz (key), {} };
    for (const auto& partial : study.partials (stop, key, state))
        tone.partials.push_back ({ partial.harmonic, partial.frequencyHz, std::abs (partial.volts) });
    return tone;
}

MaskSummary summaryOf (std::span<const MaskFit> fits) noexcept
{
    MaskSummary summary;
    for (const auto& fit : fits)
    {
        if (fit.compared == 0)
            continue;
        ++summary.keys;
        summary.keysInside += fit.outside == 0 ? 1 : 0;
        summary.keysWithAbsent += fit.absent > 0 ? 1 : 0;
        summary.rmsDb += fit.rmsDb * fit.rmsDb;
        if (fit.largestOutsideDb <= summary.largestOutsideDb)
            continue;
        summary.largestOutsideDb = fit.largestOutsideDb;
        summary.keyOfLargest = fit.key;
    }
    summary.rmsDb = summary.keys == 0 ? 0.0 : std::sqrt (summary.rmsDb / summary.keys);
    return summary;
}

} // namespace stopwright

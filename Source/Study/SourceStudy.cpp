// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/SourceStudy.h"

#include "Study/FootagePitch.h"
#include "Study/SourceSpectrum.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

constexpr double highestHeardHz = 20000.0;

/// What stands on the edge of the limit is within it.
constexpr double roundingDb = 1e-9;

Tap tapOf (const KeyedBus& bus)
{
    Tap tap;
    tap.name = bus.name;
    tap.wave = bus.wave;
    tap.footage = bus.footage;
    tap.voltsPeakToPeak = bus.voltsPeakToPeak;
    return tap;
}

/// A card with all taps there could be, so that exact mutations of all of them have their generators.
Card withAllFootages (const Card& card, const std::vector<KeyedBus>& buses)
{
    Card all = card;
    for (const auto& bus : buses)
        all.taps.push_back (tapOf (bus));
    return all;
}

/// The harmonic of `unisonHz` nearest to the centre of a band, if it lies in it.
std::optional<int> nearestIn (const MaskBand& band, double unisonHz)
{
    const double below = std::max (1.0, std::floor (band.centreHz / unisonHz));
    const auto cents = [&] (double n) { return std::abs (std::log2 (n * unisonHz / band.centreHz)); };
    const double nearest = cents (below) <= cents (below + 1.0) ? below : below + 1.0;
    if (std::abs (nearest * unisonHz - band.centreHz) > 0.5 * band.widthHz)
        return {};
    return static_cast<int> (nearest);
}

std::vector<WantedPartial> wantedOf (const TargetMask& mask, int key, double ratio, double keyHz)
{
    std::vector<WantedPartial> wanted;
    const auto add = [&] (std::size_t entry, int harmonic, double levelDb)
    {
        WantedPartial partial;
        partial.entry = entry;
        partial.harmonic = harmonic * ratio;
        partial.frequencyHz = partial.harmonic * keyHz;
        partial.wantedDb = levelDb;
        wanted.push_back (std::move (partial));
    };
    for (std::size_t i = 0; i < mask.harmonics.size(); ++i)
        if (! mask.harmonics[i].atMost && TargetMask::entryIsFor (mask.harmonics[i].wish, key))
            add (i, mask.harmonics[i].harmonic, mask.levelReStrongest (mask.harmonics[i]));
    for (std::size_t i = 0; i < mask.bands.size(); ++i)
        if (TargetMask::entryIsFor (mask.bands[i].wish, key))
            if (const auto nearest = nearestIn (mask.bands[i], ratio * keyHz))
                add (mask.harmonics.size() + i, *nearest, mask.bands[i].wish.levelDb);
    return wanted;
}

/// One key's waves: of the card, and of each keyed bus.
class KeyWaves
{
public:
    KeyWaves (const SourceStudy& study, int key, double limitDb)
        : study_ (study),
          key_ (key),
          limitDb_ (limitDb + roundingDb),
          present_ (study.card().taps, study.keySource(), key)
    {
        for (const auto& tap : study.card().taps)
            ofTaps_.emplace_back (std::vector { tap }, study.keySource(), key);
        for (const auto& bus : study.keyedBuses())
            ofBuses_.emplace_back (std::vector { tapOf (bus) }, study.keySource(), key);
    }

    void lookUp (WantedPartial& wanted) const
    {
        wanted.sourceDb = present_.levelDb (wanted.harmonic);
        if (wanted.frequencyHz > highestHeardHz)
            wanted.state = WishState::aboveHearing;
        else if (std::isinf (wanted.sourceDb))
            wanted.state = WishState::absent;
        else if (wanted.wantedDb - wanted.sourceDb > limitDb_)
            wanted.state = WishState::tooWeak;
        if (wanted.state == WishState::present)
            return;
        for (std::size_t tap = 0; tap < ofTaps_.size(); ++tap)
            wanted.reasons.push_back (reasonOf (tap, wanted));
        if (wanted.state == WishState::aboveHearing)
            return;
        for (std::size_t bus = 0; bus < ofBuses_.size(); ++bus)
            addSupply (bus, wanted);
    }

private:
    LackReason reasonOf (std::size_t tap, const WantedPartial& wanted) const
    {
        if (wanted.state == WishState::aboveHearing)
            return { tap, LackCause::aboveHearing, wanted.frequencyHz };
        // Strong enough by itself, so the others must take it away.
        if (present_.strongestVolts() > 0.0)
        {
            const double alone = std::abs (ofTaps_[tap].at (wanted.harmonic)) / present_.strongestVolts();
            if (alone > 0.0 && wanted.wantedDb - toDecibels (alone) <= limitDb_)
                return { tap, LackCause::cancelled, 0.0 };
        }
        return lackReason (study_.card().taps[tap], tap, study_.keySource().tuning, key_, wanted.harmonic);
    }

    void addSupply (std::size_t bus, WantedPartial& wanted) const
    {
        const auto& spectrum = ofBuses_[bus];
        PartialSupply supply;
        supply.bus = bus;
        supply.levelDb = spectrum.levelDb (wanted.harmonic);
        if (! (wanted.wantedDb - supply.levelDb <= limitDb_))
            return;
        supply.partial = wholeMultiple (wanted.harmonic / spectrum.partials().front().harmonic).value_or (1);
        supply.ratio = mixingRatio (present_, spectrum, wanted.harmonic, wanted.wantedDb);
        wanted.supplies.push_back (supply);
    }

    const SourceStudy& study_;
    int key_;
    double limitDb_;
    SourceSpectrum present_;
    std::vector<SourceSpectrum> ofTaps_;
    std::vector<SourceSpectrum> ofBuses_;
};

} // namespace

SourceStudy::SourceStudy (const Instrument& instrument, const std::string& division, Card card)
    : card_ (std::move (card)),
      keyedBuses_ (instrument.keyedBuses),
      keySource_ (keySourceOf (instrument, division, withAllFootages (card_, keyedBuses_)))
{}

std::vector<WantedPartial> SourceStudy::wishes (const TargetMask& mask, int key, double limitDb) const
{
    const double ratio = unisonRatio (keySource_.tuning, key, mask.unison);
    auto wanted = wantedOf (mask, key, ratio, keySource_.tuning.keyHz (key));
    const KeyWaves waves (*this, key, limitDb);
    for (auto& partial : wanted)
        waves.lookUp (partial);
    return wanted;
}

} // namespace stopwright

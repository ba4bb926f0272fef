// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Instrument.h"
#include "Organ/TargetMask.h"
#include "Study/LackReason.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// A keyed bus that has a wanted partial, and how much of it brings the partial to what the mask wants.
struct PartialSupply
{
    std::size_t bus = 0;  ///< among the instrument's keyed buses
    int partial = 1;      ///< of the bus's own wave on this key
    double levelDb = 0.0; ///< re the strongest partial of the bus

    /// Voltage of the bus's tap per voltage of the present taps (each as its own volts stand), so that the sum has the
    /// partial at the wanted level re its strongest. Into a virtual earth its resistor is then 1/ratio times the present
    /// one's. Nothing when no ratio reaches it: the filter has to do the rest.
    std::optional<double> ratio;
};

enum class WishState
{
    present,
    tooWeak, ///< by more than the limit
    absent,
    aboveHearing ///< above 20 kHz: nobody misses it
};

/// One partial that a mask wants of a key, looked up in the tapped waves before the filter.
struct WantedPartial
{
    std::size_t entry = 0; ///< of the mask: its harmonics first, then its bands
    double harmonic = 1.0; ///< counted from the key's 8 ft pitch
    double frequencyHz = 0.0;
    double wantedDb = 0.0; ///< re the strongest the mask wants
    double sourceDb = 0.0; ///< re the strongest of the tapped waves; -infinity when absent
    WishState state = WishState::present;
    std::vector<LackReason> reasons;     ///< of each tap, when it is not present
    std::vector<PartialSupply> supplies; ///< when it is absent or too weak
};

/// Whether the waves a card taps hold what a mask wants of it: no linear filter makes a partial that is not there.
/// Threading: [control].
class SourceStudy
{
public:
    /// `limitDb` of WantedPartial::state; common practice, no source.
    static constexpr double usualLimitDb = 20.0;

    /// The card as played from a division. Fails: Error as keySourceOf.
    SourceStudy (const Instrument& instrument, const std::string& division, Card card);

    const Card& card() const noexcept { return card_; }

    const std::vector<KeyedBus>& keyedBuses() const noexcept { return keyedBuses_; }

    const KeySource& keySource() const noexcept { return keySource_; }

    /// What the mask wants of a key: its harmonics that are no upper bounds, and for each band the partial nearest to
    /// its centre (in cents) within its width, if there is one. A partial is too weak when it lies more than limitDb
    /// below the wanted level, each re its own strongest. Fails: Error on a key outside 0 .. 127.
    std::vector<WantedPartial> wishes (const TargetMask& mask, int key, double limitDb = usualLimitDb) const;

private:
    Card card_;
    std::vector<KeyedBus> keyedBuses_;
    KeySource keySource_;
};

} // namespace stopwright

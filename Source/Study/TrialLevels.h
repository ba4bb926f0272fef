// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"
#include "Study/PreampResponse.h"
#include "Study/RailStudy.h"
#include "Study/SoundingKeys.h"
#include "Study/TrialComparison.h"

#include <complex>
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

namespace stopwright
{

/// The loudness of what is heard with one card and with another in the stop in hand: all drawn stops and sounding keys,
/// couplers, buses with their loading and the sag of keyed buses, every preamp, and the outlets together, shoe open.
///
/// Partials of one pitch add as complex amplitudes, all generators rising at once: so keys that are octaves of one another,
/// and stops that share a generator, add as one periodic wave, and all else as powers. A tremulant that is on and a rotary
/// speaker count with the mean over all their places: their mean gain adds to the other outlets as complex amplitudes, and
/// the rest of their mean power as a power. Small signals: no rail clips. Partials to 20 kHz.
///
/// Whether the stop in hand is heard is up to the instrument's `drawn`, and what stands in the instrument is what counts:
/// hand it over as it sounds now. Networks and answers are kept, so ask the same object again as long as nothing but the
/// two cards and the keys changes.
/// Threading: [control], one thread at a time.
class TrialLevels
{
public:
    /// The card that `cards` has for the stop in hand is not used. `outletDelaySeconds` is by how much each outlet's sound
    /// is behind as it is played (see the function of that name in Sound/); as one does without it.
    /// Fails: Error as RailStudy, and when there is no such tablet.
    TrialLevels (const Instrument& instrument,
                 const InstrumentCards& cards,
                 const std::string& tabletInHand,
                 std::vector<double> outletDelaySeconds = {});

    /// With these keys held, or with `keyInHand` when none is. Keys that are on no keyboard sound nothing.
    /// Fails: Error when a card's network is not sound.
    TrialComparison
        compare (const Card& a, const Card& b, const std::vector<HeldKey>& held, const HeldKey& keyInHand) const
    {
        return *compareUnless ([] { return false; }, a, b, held, keyInHand);
    }

    /// The same while it is wanted: `isUnwanted` is asked before each stop that is drawn and before either
    /// card; nothing once it says so. What was worked out by then is kept for the next time.
    std::optional<TrialComparison> compareUnless (const std::function<bool()>& isUnwanted,
                                                  const Card& a,
                                                  const Card& b,
                                                  const std::vector<HeldKey>& held,
                                                  const HeldKey& keyInHand) const;

    /// The same for cards with no instrument around them (keySourceForCardAlone), at their unloaded outputs.
    static TrialComparison ofCards (const Card& a, const Card& b, const std::vector<int>& heldKeys, int keyInHand);

private:
    using Tone = std::vector<RailPartial>;
    using Tones = std::vector<Tone>;
    using Keys = std::vector<std::vector<int>>;

    /// From a bus through a preamp to an outlet.
    struct Way
    {
        std::size_t bus;
        std::size_t outlet;
        PreampResponse preamp;
        mutable std::unordered_map<double, std::complex<double>> kept;
    };

    /// A trial's card as its bus has it: amps into the bus, and siemens when it is drawn.
    struct Trial
    {
        Tone amps;
        std::optional<StopPort> port;
    };

    void addWays (const InstrumentCards& cards);
    Keys keysOf (const std::vector<HeldKey>& held, const HeldKey& keyInHand) const;
    std::optional<Tone> ampsOfOthers (std::size_t bus,
                                      const InstrumentCards& cards,
                                      const Keys& keys,
                                      const std::function<bool()>& isUnwanted) const;
    Trial trialOf (const Card& card, const Keys& keys) const;
    std::complex<double> siemensOf (const Trial& trial, double frequencyHz) const;
    void addOnward (std::size_t bus, const Tone& amps, const Trial* trial, std::vector<Tones>& outlets) const;
    Tone rotated (std::size_t outlet, Tone tone, TonePower& apart) const;
    TonePower heard (const std::vector<Tones>& outlets) const;

    std::size_t inHand_;
    Instrument instrument_;
    InstrumentCards cards_; ///< the stop in hand's left out
    RailStudy rail_;
    RailState state_;
    std::optional<std::size_t> busInHand_;
    std::vector<double> outletDelaySeconds_; ///< [outlet], or fewer
    std::vector<Way> ways_;
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/TrialPair.h"
#include "Organ/Instrument.h"

#include <map>
#include <optional>
#include <string>

namespace stopwright
{

/// All that editing changes, and nothing else: what undo brings back and what is kept against a crash. Which tablets are
/// drawn is playing, not editing, though the instrument carries it. Threading: [control].
struct BenchWork
{
    std::optional<Instrument> instrument;
    int stopIndex = -1; ///< of the stop in hand in Instrument::stops; -1 without an instrument

    /// The cards that have been in hand, by the file that their tablets name; a card without an instrument under "".
    /// Tablets that name the same file share the card.
    std::map<std::string, TrialPair> trials;

    /// The stop in hand, or nullptr for a card alone.
    const StopTablet* stopInHand() const noexcept;

    /// Under which name the card in hand stands in `trials`.
    std::string cardName() const;

    /// Both fail with std::logic_error while nothing is open.
    TrialPair& pair();
    const TrialPair& pair() const;

    /// The card in hand; an empty one while nothing is open.
    const Card& card() const noexcept;

    /// Has the tablets, couplers and outlet switches stand as in `other`, as far as it has the same ones.
    void takeRegistrationOf (const BenchWork& other);
};

/// The same for an instrument.
void takeRegistration (Instrument& to, const Instrument& from);

/// Whether a stop's sound comes onto a mixing bus: one that the instrument has, or the only one where it names none.
bool hasBus (const Instrument& instrument, const StopTablet& stop);

/// Whether both trials would be written alike, whichever is in hand.
bool isSamePair (const TrialPair& first, const TrialPair& second);

/// Whether both would be written alike, registration apart.
bool isSameWork (const BenchWork& first, const BenchWork& second);

/// Whether two instruments would be written alike, registration apart.
bool isSameInstrument (const std::optional<Instrument>& first, const std::optional<Instrument>& second);

} // namespace stopwright

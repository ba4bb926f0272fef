// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"

#include <string>
#include <vector>

namespace stopwright
{

/// One thing that is otherwise than it was found: what was noted by RailEdit, against what is there.
struct Alteration
{
    enum class Field
    {
        bus,
        mixingOhms,
        whenRetired,
        polarity,
        division,
        card,
        tapSource,
        tapPolarity,
        tapNode
    };

    Field field = Field::bus;
    std::string tablet;             ///< that was altered; empty where a tap was
    std::string tap;                ///< that was altered; empty where a tablet was
    std::string cardFile;           ///< of the tap, as the instrument names it; empty for a card alone
    std::vector<std::string> users; ///< of the tap's card: tablets, then "stage S of P"; empty for a card alone

    std::string where;     ///< "Krummhorn 8", "Krummhorn 8, tap Square 8"
    std::string what;      ///< "mixing bus"
    std::string asFound;   ///< "Upper reeds"
    std::string asAltered; ///< "Lower chorus"
    std::string words;     ///< "Krummhorn 8: mixing bus: Upper reeds -> Lower chorus"
    std::string wayBack;   ///< a sentence for who puts it back: what to take off where, and where it goes
    AlterationNote note;

    bool isOfTap() const noexcept { return ! tap.empty(); }
};

/// What was altered at the tablets of an instrument, in the order of its rail. Threading: [control], like all below.
std::vector<Alteration> changeList (const Instrument& instrument);

/// The same, and then at the taps of its cards, each card once.
std::vector<Alteration> changeList (const Instrument& instrument, const InstrumentCards& cards);

/// What was altered at the taps of a card alone.
std::vector<Alteration> changeList (const Card& card);

/// Puts back one alteration of a tablet, and nothing else. Fails: Error where it is as found, the tablet is gone, or the
/// instrument has no longer what it was on.
Instrument revert (Instrument instrument, const Alteration& alteration);

/// The same for one of a tap; `card` is the one that the alteration names.
Card revert (Card card, const Alteration& alteration);

} // namespace stopwright

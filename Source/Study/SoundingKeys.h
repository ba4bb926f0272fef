// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"

#include <string>
#include <vector>

namespace stopwright
{

/// A key of a keyboard, as held by a player. `division` is its name.
struct HeldKey
{
    std::string division;
    int key = 0;

    bool operator== (const HeldKey&) const = default;
};

/// Which keys sound in each division, [division], ascending: those held, and those that drawn couplers play, as far as the
/// compass goes. A key that is played twice over sounds once; couplers do not chain. Threading: [control].
/// Fails: Error on a division the instrument lacks, or a key outside its compass.
std::vector<std::vector<int>> soundingKeys (const Instrument& instrument, const std::vector<HeldKey>& held);

/// Every key of these divisions; of all when none is named. Fails: Error as above.
std::vector<HeldKey> allKeysOf (const Instrument& instrument, const std::string& division = {});

/// The cards with their taps' volts as they are while those keys sound: a keyed bus with a resistor for each key gives
/// each of n keys (Rc + Rl) / (Rc + n Rl) of what it gives alone (see KeyedBus). A tap is on the first keyed bus of its
/// wave and footage. Threading: [control].
InstrumentCards
    sagged (InstrumentCards cards, const Instrument& instrument, const std::vector<std::vector<int>>& soundingKeys);

} // namespace stopwright

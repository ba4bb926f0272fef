// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"

#include <string>
#include <vector>

namespace stopwright
{

/// The unknown fields of a card's taps and parts, lifted out of Card::unknownFields while names change or things go, since
/// they are kept there by name: the texts in the order of the taps and of the parts. For the .cpp files of this folder only.
struct KeptFields
{
    std::vector<std::string> ofTaps;
    std::vector<std::string> ofAsFound; ///< of the taps, empty where a tap has none
    std::vector<std::string> ofParts;
};

/// Takes them out of the card. Threading: [control].
KeptFields takeKeptFields (Card& card);

/// Puts them back under the names that the card's taps and parts have; one text for each. Threading: [control].
void putKeptFields (const KeptFields& kept, Card& card);

/// Drops what is noted of a tap of the card, and the unknown fields in it, if the tap is as it was found.
/// Threading: [control].
void dropEmptyAsFound (Card& card, Tap& tap);

} // namespace stopwright

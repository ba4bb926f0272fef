// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

/// One end that is soldered to a node of a card: a lead of a part, the end of a tap, or the card's output.
struct CardLead
{
    enum class Owner
    {
        part,
        tap,
        output
    };

    Owner owner = Owner::part;
    std::string name;     ///< of the part or tap; empty for the output
    std::size_t lead = 0; ///< of a part, in the order of its kind

    bool operator== (const CardLead&) const = default;
};

/// Every end at this node: taps, then parts, then the output, in the order of the card. Threading: [control].
std::vector<CardLead> leadsAt (const Card& card, std::string_view node);

/// The nodes of a card, each once, in the order in which taps, parts and output name them; common among them.
/// Threading: [control].
std::vector<std::string> nodesOf (const Card& card);

/// The node an end is at, to be read or soldered elsewhere. Of several parts or taps of one name the first is meant.
/// Threading: [control]. Fails: Error when the card has no such part, tap or lead.
std::string& nodeOf (Card& card, const CardLead& lead);

} // namespace stopwright

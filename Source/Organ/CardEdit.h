// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Organ/CardLead.h"
#include "Organ/KeyedBus.h"

#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

// Changes of a card's network: each gives back the changed card and leaves the one it was given as it is. Names may be
// proposed: an empty one stands for the next that is free. Unknown fields go with what they belong to.
//
// Refused is what a document cannot hold: a name that is taken, empty, longer than 64 characters or with control characters
// in it, a value out of its range, too many parts or taps. What cannot be computed is not refused; NetlistCheck says so.
// Of several parts or taps of one name the first is meant. Threading: [control].
// Fails: Error with one sentence, from every function here, also where a part, tap, lead or node is not on the card.

/// The name a new part of this kind would get: "R7", "C4", "VR1".
std::string proposedPartName (const Card& card, const PartValue& value);

/// The name a new tap would get: what it is taken from ("Square 8") where that is free, else "W3".
std::string proposedTapName (const Card& card, std::string_view keyedBus = {});

/// A name no node of the card has: "n1".
std::string proposedNodeName (const Card& card);

/// Adds a part behind the others; `nodes` in the order of its kind.
Card addPart (Card card, const PartValue& value, std::vector<std::string> nodes, std::string name = {});

/// Nodes that only this part touched go with it; the output stays where it is named.
Card removePart (Card card, std::string_view name);

Card renamePart (Card card, std::string_view name, const std::string& newName);

/// Solders one lead of a part to another node, which need not be there yet. `lead` in the order of its kind, from 0.
Card rewireLead (Card card, std::string_view part, std::size_t lead, const std::string& node);

/// Makes two nodes one. It is called `kept`, or common if either of them is.
Card joinNodes (Card card, std::string_view kept, std::string_view joined);

/// Takes these ends, at least one, off a node and brings them together at a new one.
Card splitNode (Card card, std::string_view node, const std::vector<CardLead>& leads, std::string newNode = {});

/// Calls a node other than common by another name, which no node has yet, at parts, taps and output, also where a tap was
/// found at it. Two nodes of one name would be one: that is `joinNodes`.
Card renameNode (Card card, std::string_view node, const std::string& newName);

/// Adds a tap behind the others, as it stands but for an empty name.
Card addTap (Card card, Tap tap);

/// A tap from a keyed bus of the instrument to a node, under the name proposed for it unless another is given: its wave,
/// footage, level and source resistance.
Card addTap (Card card, const KeyedBus& bus, const std::string& node, std::string name = {});

/// The last tap stays, for a card has at least one.
Card removeTap (Card card, std::string_view name);

Card renameTap (Card card, std::string_view name, const std::string& newName);

Card rewireTap (Card card, std::string_view name, const std::string& node);

Card setOutput (Card card, const std::string& node);

} // namespace stopwright

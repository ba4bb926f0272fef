// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/CardEdit.h"

#include "Circuit/CircuitLimits.h"
#include "Circuit/FindingWords.h"
#include "Organ/CardItems.h"
#include "Organ/DocumentGuard.h"
#include "Organ/KeptFields.h"
#include "Organ/UsualParts.h"
#include "Units/Error.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

void requireRoom (std::size_t count, int most, std::string_view what)
{
    if (count >= static_cast<std::size_t> (most))
        throw Error ("A card holds at most " + std::to_string (most) + " " + std::string (what)
                     + "; remove one first, or split the network over two cards.");
}

/// Removes items[index] with the unknown fields kept for it.
template <typename Item>
void removeItem (std::vector<Item>& items, std::vector<std::string>& kept, std::size_t index)
{
    items.erase (items.begin() + static_cast<std::ptrdiff_t> (index));
    kept.erase (kept.begin() + static_cast<std::ptrdiff_t> (index));
}

} // namespace

std::string proposedPartName (const Card& card, const PartValue& value)
{
    return nextName (card, partLetters (value));
}

std::string proposedTapName (const Card& card, std::string_view keyedBus)
{
    return keyedBus.empty() || isNameTaken (card, keyedBus) ? nextName (card, "W") : std::string (keyedBus);
}

Card addPart (Card card, const PartValue& value, std::vector<std::string> nodes, std::string name)
{
    requireRoom (card.parts.size(), CircuitLimits::parts, "parts");
    Part part;
    part.name = name.empty() ? proposedPartName (card, value) : std::move (name);
    part.nodes = std::move (nodes);
    part.value = value;
    requireName (part.name);
    requireFreeName (card, part.name);
    requireHeld (part);
    card.parts.push_back (std::move (part));
    return card;
}

Card removePart (Card card, std::string_view name)
{
    const auto index = static_cast<std::size_t> (&partNamed (card, name) - card.parts.data());
    auto kept = takeKeptFields (card);
    removeItem (card.parts, kept.ofParts, index);
    putKeptFields (kept, card);
    return card;
}

Card renamePart (Card card, std::string_view name, const std::string& newName)
{
    auto& part = partNamed (card, name);
    if (part.name == newName)
        return card;
    requireName (newName);
    requireFreeName (card, newName);
    const auto kept = takeKeptFields (card);
    part.name = newName;
    putKeptFields (kept, card);
    return card;
}

Card rewireLead (Card card, std::string_view part, std::size_t lead, const std::string& node)
{
    requireName (node);
    nodeOf (card, { CardLead::Owner::part, std::string (part), lead }) = node;
    return card;
}

Card addTap (Card card, Tap tap)
{
    requireRoom (card.taps.size(), CircuitLimits::sources, "taps");
    if (tap.name.empty())
        tap.name = proposedTapName (card);
    requireName (tap.name);
    requireFreeName (card, tap.name);
    requireHeld (tap);
    card.taps.push_back (std::move (tap));
    return card;
}

Card addTap (Card card, const KeyedBus& bus, const std::string& node, std::string name)
{
    Tap tap;
    tap.name = name.empty() ? proposedTapName (card, bus.name) : std::move (name);
    tap.wave = bus.wave;
    tap.footage = bus.footage;
    tap.voltsPeakToPeak = bus.voltsPeakToPeak;
    tap.sourceOhms = bus.sourceOhms;
    tap.node = node;
    return addTap (std::move (card), std::move (tap));
}

Card removeTap (Card card, std::string_view name)
{
    const auto& tap = tapNamed (card, name);
    if (card.taps.size() == 1)
        throw Error (partWords (tap.name)
                     + " is the only tap of this card, and a card has at least one; add another before you remove it.");
    const auto index = static_cast<std::size_t> (&tap - card.taps.data());
    auto kept = takeKeptFields (card);
    kept.ofAsFound.erase (kept.ofAsFound.begin() + static_cast<std::ptrdiff_t> (index));
    removeItem (card.taps, kept.ofTaps, index);
    putKeptFields (kept, card);
    return card;
}

Card renameTap (Card card, std::string_view name, const std::string& newName)
{
    auto& tap = tapNamed (card, name);
    if (tap.name == newName)
        return card;
    requireName (newName);
    requireFreeName (card, newName);
    const auto kept = takeKeptFields (card);
    tap.name = newName;
    putKeptFields (kept, card);
    return card;
}

Card rewireTap (Card card, std::string_view name, const std::string& node)
{
    requireName (node);
    tapNamed (card, name).node = node;
    return card;
}

Card setOutput (Card card, const std::string& node)
{
    requireName (node);
    card.output = node;
    return card;
}

} // namespace stopwright

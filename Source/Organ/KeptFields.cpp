// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/KeptFields.h"

#include "Organ/AsFoundFields.h"
#include "Organ/DocumentFields.h"

#include <utility>

namespace stopwright
{

namespace
{

/// Whether a document writes an object for it that unknown fields may stand in.
bool hasPlace (const Tap& tap, std::string_view kind)
{
    return kind != tapAsFound || tap.asFound;
}

bool hasPlace (const Part&, std::string_view)
{
    return true;
}

template <typename Item>
std::vector<std::string>
    taken (std::map<std::string, std::string>& fields, std::string_view kind, const std::vector<Item>& items)
{
    std::vector<std::string> texts;
    texts.reserve (items.size());
    std::map<std::string, int> uses;
    for (const auto& item : items)
    {
        if (! hasPlace (item, kind))
        {
            texts.emplace_back();
            continue;
        }
        auto node = fields.extract (unknownFieldPlace (kind, item.name, uses));
        texts.push_back (node.empty() ? std::string() : std::move (node.mapped()));
    }
    return texts;
}

template <typename Item>
void put (const std::vector<std::string>& texts,
          std::map<std::string, std::string>& fields,
          std::string_view kind,
          const std::vector<Item>& items)
{
    std::map<std::string, int> uses;
    for (std::size_t index = 0; index < items.size(); ++index)
    {
        if (! hasPlace (items[index], kind))
            continue;
        const auto place = unknownFieldPlace (kind, items[index].name, uses);
        if (! texts[index].empty())
            fields.insert_or_assign (place, texts[index]);
    }
}

} // namespace

KeptFields takeKeptFields (Card& card)
{
    return { taken (card.unknownFields, "tap", card.taps), taken (card.unknownFields, tapAsFound, card.taps),
             taken (card.unknownFields, "part", card.parts) };
}

void putKeptFields (const KeptFields& kept, Card& card)
{
    put (kept.ofTaps, card.unknownFields, "tap", card.taps);
    put (kept.ofAsFound, card.unknownFields, tapAsFound, card.taps);
    put (kept.ofParts, card.unknownFields, "part", card.parts);
}

void dropEmptyAsFound (Card& card, Tap& tap)
{
    if (! tap.asFound || tap.asFound->source || tap.asFound->polarity || tap.asFound->node)
        return;
    auto kept = takeKeptFields (card);
    tap.asFound.reset();
    putKeptFields (kept, card);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/CardItems.h"

#include "Circuit/FindingWords.h"
#include "Organ/Spelling.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <charconv>

namespace stopwright
{

namespace
{

/// "There is no part "R9" on this card; it has R1 and R2."
template <typename Item>
[[noreturn]] void refuseStranger (std::string_view word, std::string_view name, const std::vector<Item>& items)
{
    std::vector<std::string> names;
    names.reserve (items.size());
    for (const auto& item : items)
        names.push_back (item.name);
    const std::vector<std::string_view> views (names.begin(), names.end());
    const auto closest = closestWord (name, views);
    throw Error ("There is no " + std::string (word) + " " + quotedText (name) + " on this card; "
                 + (closest         ? "did you mean " + quotedText (*closest) + "?"
                    : names.empty() ? "it has none."
                                    : "it has " + partsWords (names) + "."));
}

template <typename Item>
Item& itemNamed (std::vector<Item>& items, std::string_view word, std::string_view name)
{
    const auto found = std::ranges::find (items, name, &Item::name);
    if (found == items.end())
        refuseStranger (word, name, items);
    return *found;
}

/// The number behind the letters, 0 where the name is another.
int numberAfter (std::string_view letters, std::string_view name)
{
    constexpr std::size_t mostDigits = 6;
    if (! name.starts_with (letters))
        return 0;
    const auto digits = name.substr (letters.size());
    int number = 0;
    const auto [end, fault] = std::from_chars (digits.data(), digits.data() + digits.size(), number);
    const bool isNumber = fault == std::errc() && end == digits.data() + digits.size() && digits.size() <= mostDigits;
    return isNumber ? number : 0;
}

} // namespace

Part& partNamed (Card& card, std::string_view name)
{
    return itemNamed (card.parts, "part", name);
}

Tap& tapNamed (Card& card, std::string_view name)
{
    return itemNamed (card.taps, "tap", name);
}

bool isNameTaken (const Card& card, std::string_view name) noexcept
{
    const auto hasName = [name] (const auto& item) { return item.name == name; };
    return std::ranges::any_of (card.taps, hasName) || std::ranges::any_of (card.parts, hasName);
}

void requireFreeName (const Card& card, std::string_view name)
{
    if (isNameTaken (card, name))
        throw Error ("The name " + quotedText (name) + " is taken on this card; choose another.");
}

std::string nextName (const Card& card, std::string_view letters)
{
    int highest = 0;
    for (const auto& tap : card.taps)
        highest = std::max (highest, numberAfter (letters, tap.name));
    for (const auto& part : card.parts)
        highest = std::max (highest, numberAfter (letters, part.name));
    return std::string (letters).append (std::to_string (highest + 1));
}

} // namespace stopwright

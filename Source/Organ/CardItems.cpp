// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/CardItems.h"

#include "Organ/NamedItem.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <charconv>

namespace stopwright
{

namespace
{

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
    return itemNamed (card.parts, "part", onThisCard, name);
}

Tap& tapNamed (Card& card, std::string_view name)
{
    return itemNamed (card.taps, "tap", onThisCard, name);
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

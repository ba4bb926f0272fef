// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <string_view>
#include <vector>

namespace stopwright
{

inline constexpr std::string_view inThisInstrument = "in this instrument";
inline constexpr std::string_view onThisCard = "on this card";

// Finding things of an instrument or a card by name. For the .cpp files of this folder only. Threading: [control].

/// There is no mixing bus "Uper" in this instrument; did you mean ...? Or, where none is like it, which there are.
[[noreturn]] void refuseUnknownName (std::string_view word,
                                     std::string_view where,
                                     std::string_view name,
                                     const std::vector<std::string_view>& names);

/// The item of that name, the first of several. `word` is what is meant ("mixing bus"), `where` it was looked for ("in
/// this instrument"). Fails: Error.
template <typename Items>
auto& itemNamed (Items& items, std::string_view word, std::string_view where, std::string_view name)
{
    const auto found =
        std::find_if (items.begin(), items.end(), [name] (const auto& item) { return item.name == name; });
    if (found != items.end())
        return *found;
    std::vector<std::string_view> names;
    names.reserve (items.size());
    for (const auto& item : items)
        names.emplace_back (item.name);
    refuseUnknownName (word, where, name, names);
}

/// Fails: Error that names the tap or tablet `owner` unless the polarity is 1 or -1.
void requirePolarity (std::string_view owner, int polarity);

} // namespace stopwright

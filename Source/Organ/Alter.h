// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

namespace stopwright
{

// How an alteration is noted. For the .cpp files of this folder only. Threading: [control].

/// Gives `value` another, and keeps in asFound->*field what it was before the first time; nothing when it is that again.
/// Returns whether it was another.
template <typename Value, typename Found>
bool alter (Value& value, const Value& to, std::optional<Found>& asFound, std::optional<Value> Found::*field)
{
    if (value == to)
        return false;
    if (! asFound)
        asFound.emplace();
    auto& found = (*asFound).*field;
    if (! found)
        found = value;
    value = to;
    if (*found == value)
        found.reset();
    return true;
}

} // namespace stopwright

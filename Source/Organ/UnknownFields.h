// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

/// A field of a document that the program does not use where it stands. It is kept and written back; `sentence` tells
/// where it is and what was probably meant.
struct UnknownField
{
    std::string place; ///< "part R1", or empty for the document itself
    std::string field;
    std::string sentence;
};

/// The kept fields of a card, an instrument or a mask (their member unknownFields), one by one. Threading: [control].
std::vector<UnknownField> listUnknownFields (const std::map<std::string, std::string>& unknownFields);

/// Every field the program knows in an object of a kind: "card", "tap" or "part", "mask", "harmonic" or "band", or one of
/// those that Instrument keeps unknown fields of ("instrument", "keyedBus" ...). Empty for another kind. Threading: [any].
std::span<const std::string_view> knownFields (std::string_view kind) noexcept;

} // namespace stopwright

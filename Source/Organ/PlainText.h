// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace stopwright
{

/// Index of the first byte that is not UTF-8, or npos when all of it is.
/// Threading: [any]. Source: The Unicode Standard 15.0, table 3-7 (well-formed byte sequences).
std::size_t firstByteNotUtf8 (std::string_view text) noexcept;

/// Number of characters (code points) of well-formed UTF-8. Threading: [any].
std::size_t characterCount (std::string_view text) noexcept;

/// Whether a text holds a control character (U+0000 .. U+001F, U+007F). Threading: [any].
bool hasControlCharacter (std::string_view text) noexcept;

/// A foreign text made safe for one line of a terminal: control characters and what is not UTF-8 become "?", and more
/// than `longest` characters are cut off with "...". Threading: [control].
std::string printable (std::string_view text, std::size_t longest = 60);

/// A number as a document would spell it, as short as is exact. Threading: [control].
std::string numberText (double value);

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace stopwright
{

/// The word that a misspelt one most likely stands for: the nearest by edit distance, letter case apart, if it is near
/// enough (a third of its letters, at least one). Threading: [control].
/// Source: Wagner, Fischer, "The string-to-string correction problem", 1974; swapped neighbours count as one edit.
std::optional<std::string_view> closestWord (std::string_view text, std::span<const std::string_view> words);

/// The words as "a, b or c" (or another word than "or"). Threading: [control].
std::string listedWords (std::span<const std::string_view> words, std::string_view before = "or");

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace stopwright
{

constexpr std::size_t mostShownLetters = 14; ///< of a name on a sheet where there is no room for all of it

/// Names as they are shown where there is little room, in their order: whole up to `mostShownLetters`, else that many with
/// an ellipsis in the middle for what is left out. Where two would read the same, another part of one is left out, as long
/// as that helps. UTF-8. Threading: [any].
std::vector<std::string> shortNames (const std::vector<std::string>& names);

} // namespace stopwright

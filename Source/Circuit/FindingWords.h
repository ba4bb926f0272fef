// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

/// A part's or tap's name for a sentence: as it stands, or quoted when it is empty, long or has odd characters.
/// Threading: [control], like all below.
std::string partWords (std::string_view name);

/// The same for several: "U1", "U1 and U2", "U1, U2 and U3"; beyond four the rest is counted.
std::string partsWords (const std::vector<std::string>& names);

/// node "t", or: circuit common.
std::string nodeWords (std::string_view name);

/// node "t", or: nodes "a", "b" and "c"; beyond four the rest is counted.
std::string nodesWords (const std::vector<std::string>& names);

/// The same words with a capital letter, to begin a sentence.
std::string capitalised (std::string words);

} // namespace stopwright

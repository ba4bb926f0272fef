// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/TargetMask.h"
#include "Study/MaskFit.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

// How the commands speak of masks. Threading: [control].

/// "h3", or "band main": of the mask's harmonics first, then of its bands.
std::string entryWords (const TargetMask& mask, std::size_t entry);

/// The same as a cell of a CSV file, the band's name as it is.
std::string entryCell (const TargetMask& mask, std::size_t entry);

const MaskWish& wishOf (const TargetMask& mask, std::size_t entry);

/// "common practice, no source", "published: A. Author, A Book".
std::string originWords (Certainty certainty, const std::string& source);

/// "C4", "C2 to C5", "every key".
std::string keysWords (int lowestKey, int highestKey);

/// "inside", "too strong", "too weak", "absent" ...
std::string_view verdictWord (MaskVerdict verdict) noexcept;

/// The named keys, or those from lowestKey to highestKey that the mask is meant for. Fails: Error when none is left, or
/// a named one is not between them.
std::vector<int> keysToCompare (const TargetMask& mask, const std::vector<int>& named, int lowestKey, int highestKey);

/// Two lines: what the mask is called and how far it can be trusted, with what to know when a key is not what it is
/// meant for.
std::string maskWords (const TargetMask& mask, const std::vector<int>& keys);

} // namespace stopwright

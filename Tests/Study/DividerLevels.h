// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <map>

namespace stopwright::test
{

/// Levels of the chord C2 G2 C3 E3 G3 C4 E4 G4 C5 E5 on 8 and 4 ft squares of +-1, and what share of time each lasts:
/// binary dividers behind divisors of one clock for octave 8, followed from edge to edge in whole ticks through everything
/// that ever happens, all rising together at the start.
std::map<int, double> dividerLevels (std::int64_t divisorC, std::int64_t divisorE, std::int64_t divisorG);

} // namespace stopwright::test

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/WaveSource.h"

#include <string>
#include <string_view>

namespace stopwright
{

/// A wave as the trade says it: "square, 8 ft, 1.00 V p-p behind 1.00 kΩ", with what tells it from another of its shape:
/// "pulse of duty 0.0625", "staircase of 4 ranks". Threading: [control].
std::string waveWords (const WaveSource& source);

/// What stands before a level in volts peak to peak that is not the whole wave's: "first " for a staircase, whose first
/// square it is of, and "from " for a rounded wave, of which it is that of the square before; else nothing.
/// Threading: [any].
std::string_view levelPrefix (WaveKind kind) noexcept;

} // namespace stopwright

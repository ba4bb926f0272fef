// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Part.h"

#include <span>
#include <string_view>

namespace stopwright
{

/// One part of every kind, in the order of PartValue, with the value it has until another is chosen: 10 kilohm, 10 nF,
/// a coil of 1 H wound with 150 ohm, a linear track of 10 kilohm at its middle, an open switch, an ideal op-amp, a silicon
/// small-signal diode, silicon small-signal transistors, 12 V. Common practice and typical data-sheet values, no source.
/// Threading: [control].
std::span<const PartValue> usualParts();

/// The letters a part of this kind is called by on a drawing: R, C, L, VR, S, U, D, Q, V. Threading: [any].
std::string_view partLetters (const PartValue& value) noexcept;

} // namespace stopwright

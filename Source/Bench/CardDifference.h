// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/CardKnob.h"

#include <optional>
#include <vector>

namespace stopwright
{

/// One knob to be turned to a value.
struct KnobMove
{
    CardKnob knob;
    double value = 0.0;
};

/// The knobs to turn so that the sound of `from` becomes that of `to`; nothing when turning cannot do it (a part was
/// added, rewired, switched) and the card must be set anew. A potentiometer that arrives at or leaves an end of its
/// track counts as such, since its network there changes too far for a ramp. Threading: [control].
std::optional<std::vector<KnobMove>> knobMovesBetween (const Card& from, const Card& to);

/// Whether two cards have the same taps and parts, of the same names and kinds between the same nodes, so that one is the
/// other with other numbers. Threading: [control].
bool isSameNetwork (const Card& first, const Card& second);

} // namespace stopwright

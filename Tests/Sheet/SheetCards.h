// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Support/Random.h"

#include <string>
#include <vector>

namespace stopwright
{

/// A netlist as a card: each source an 8 ft square.
Card cardOf (const Netlist& netlist);

/// Parts of every kind thrown together, mostly illegal: leads on the same node or on none, islands, no output or one
/// nowhere, supplies on anything, names twice.
Card randomUnfinishedCard (Random& random, int partCount);

/// A ladder of sections across and along the signal, with that many parts.
Card ladderCard (int partCount);

/// Resistors, each between any two of the nodes "n0", "n1" ... and common, with a tap at the first and the output at the
/// last.
Card meshCard (Random& random, int partCount, int nodeCount);

/// The same card with taps and parts in another order.
Card shuffled (Card card, Random& random);

} // namespace stopwright

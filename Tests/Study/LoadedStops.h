// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/TestOrgan.h"

#include <cstddef>
#include <vector>

namespace stopwright
{
class Random;
} // namespace stopwright

namespace stopwright::test
{

/// A virtual earth that feeds back 47 k, ideal.
MixingBus virtualEarth();

/// The card with an ideal follower at its output, so that nothing loads its network.
Card buffered (Card card);

/// A ladder of two to four random sections of resistors, capacitors and now and then a coil, on one or two random waves.
Card randomCard (Random& random);

/// So many stops of random cards on one bus, of a division of the keys C5 and C#5: drawn or not, open or grounded, each by
/// chance.
TestOrgan randomOrgan (Random& random, const MixingBus& bus, int stops);

/// Volts rms of one drawn stop at one key, from the whole rail drawn as one network and solved node by node with the taps
/// of all other stops at zero volts.
double wholeRailVolts (TestOrgan organ, std::size_t stop, int key);

} // namespace stopwright::test

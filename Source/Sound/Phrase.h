// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace stopwright
{

/// A key going down or up at a time from the beginning.
struct TimedKey
{
    double seconds = 0.0;
    int key = 60;
    bool down = true;
};

/// Keys to play, in time order; `seconds` is the whole length including the ring-out.
struct Phrase
{
    std::vector<TimedKey> keys;
    double seconds = 0.0;
};

/// All `keys` down at 0 and up at `seconds`. Threading: [control].
Phrase heldKeys (const std::vector<int>& keys, double seconds);

} // namespace stopwright

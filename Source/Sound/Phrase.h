// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/KeyEvent.h"

#include <vector>

namespace stopwright
{

/// A key of a keyboard (a MIDI channel or a division, see Keyboard) going down or up at a time from the beginning.
struct TimedKey
{
    double seconds = 0.0;
    int key = 60;
    bool down = true;
    int keyboard = Keyboard::ofChannel (1);
};

/// The swell shoe put to a place at a time from the beginning: 0 closed .. 1 open. Before its first move it is open.
struct TimedSwell
{
    double seconds = 0.0;
    double position = 1.0;
};

/// Keys to play and moves of the swell shoe, each in time order; `seconds` is the whole length including the ring-out.
struct Phrase
{
    std::vector<TimedKey> keys;
    double seconds = 0.0;
    std::vector<TimedSwell> swells {};
};

/// The same with its keys and moves in time order, those of one time as they were, and times below 0 at 0.
/// Threading: [control].
Phrase inTimeOrder (Phrase phrase);

/// All `keys` of a keyboard down at 0 and up at `seconds`. Threading: [control].
Phrase heldKeys (const std::vector<int>& keys, double seconds, int keyboard = Keyboard::ofChannel (1));

} // namespace stopwright

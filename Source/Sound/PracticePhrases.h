// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/Phrase.h"

#include <vector>

namespace stopwright
{

/// What a technician plays to judge a stop, made for the compass there is. Key numbers are MIDI numbers (C4 = 60), the
/// lowest at most the highest. Threading: [control].
struct PracticePhrases
{
    /// Own choice, no source: slow enough that a keyed wave of usual attack and release stands and fades on each key.
    static constexpr double scaleStepSeconds = 0.25;
    static constexpr double scaleHeldSeconds = 0.2;

    /// Long enough to read a meter, then as much silence as a release takes.
    static constexpr double chordHeldSeconds = 4.0;
    static constexpr double chordRestSeconds = 1.0;

    /// Every key of the compass, one after the other from the lowest up: a level that grows or falls along the keys, a
    /// dead note or a break is heard at once.
    static Phrase scale (int lowestKey, int highestKey, int keyboard = Keyboard::ofChannel (1));

    /// The keys of a full chord of C major as ten fingers hold it over the lowest C, as far as the compass goes:
    /// C2 G2 C3 E3 G3 C4 E4 G4 C5 E5 on a keyboard from C2. It is the chord that headroom is judged by. A compass without
    /// a C is played from its lowest key.
    static std::vector<int> fullChordKeys (int lowestKey, int highestKey);

    static Phrase fullChord (int lowestKey, int highestKey, int keyboard = Keyboard::ofChannel (1));
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/PracticePhrases.h"

#include <array>

namespace stopwright
{

namespace
{

constexpr int octave = 12;

/// C G C E G C E G C E in semitones over the lowest.
constexpr std::array chordOffsets { 0, 7, 12, 16, 19, 24, 28, 31, 36, 40 };

} // namespace

Phrase PracticePhrases::scale (int lowestKey, int highestKey, int keyboard)
{
    Phrase phrase;
    double start = 0.0;
    for (int key = lowestKey; key <= highestKey; ++key)
    {
        phrase.keys.push_back ({ start, key, true, keyboard });
        phrase.keys.push_back ({ start + scaleHeldSeconds, key, false, keyboard });
        start += scaleStepSeconds;
    }
    phrase.seconds = start;
    return phrase;
}

std::vector<int> PracticePhrases::fullChordKeys (int lowestKey, int highestKey)
{
    const int lowestC = lowestKey + (octave - lowestKey % octave) % octave;
    const int root = lowestC <= highestKey ? lowestC : lowestKey;
    std::vector<int> keys;
    for (const int offset : chordOffsets)
        if (root + offset <= highestKey)
            keys.push_back (root + offset);
    return keys;
}

Phrase PracticePhrases::fullChord (int lowestKey, int highestKey, int keyboard)
{
    auto phrase = heldKeys (fullChordKeys (lowestKey, highestKey), chordHeldSeconds, keyboard);
    phrase.seconds += chordRestSeconds;
    return phrase;
}

} // namespace stopwright

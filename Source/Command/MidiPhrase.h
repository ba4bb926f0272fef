// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/StandardMidiFile.h"
#include "Sound/Phrase.h"

namespace stopwright
{

/// The keys of a MIDI file as a manual plays them: all channels together, a key up when the last channel lets go of it.
/// Keys outside the compass are left out and counted.
struct MidiPhrase
{
    Phrase phrase; ///< as long as its last key
    int notes = 0;
    int notesLeftOut = 0;
};

/// Keys are MIDI numbers. Keys that nobody releases go up with the last event. Threading: [control].
MidiPhrase phraseOf (const StandardMidiFile& file, int lowestKey, int highestKey);

} // namespace stopwright

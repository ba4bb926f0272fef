// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/StandardMidiFile.h"
#include "Organ/Instrument.h"
#include "Sound/Phrase.h"

#include <array>
#include <optional>
#include <vector>

namespace stopwright
{

/// The keys there are on a keyboard.
struct Compass
{
    int lowestKey = 0;
    int highestKey = 127;

    bool operator== (const Compass&) const = default;
};

/// The keys that each MIDI channel plays; none where nothing hears it.
using ChannelCompasses = std::array<std::optional<Compass>, Keyboard::midiChannels>;

/// All channels play one keyboard. Threading: [control].
ChannelCompasses channelsOfOne (const Compass& compass);

/// Each channel plays the division that hears it, as InstrumentVoice does: the one that states it, else the first that
/// states none. Threading: [control].
ChannelCompasses channelsOf (const Instrument& instrument);

/// The keys of a MIDI file, each channel a keyboard of its own, and the moves of the swell shoe. Keys outside the
/// compass and channels that nothing hears are left out and counted.
struct MidiPhrase
{
    Phrase phrase;            ///< as long as its last key
    double fileSeconds = 0.0; ///< where the longest track ends
    int notes = 0;
    int notesOutside = 0;
    int notesUnheard = 0;
    std::vector<int> unheardChannels; ///< 1 .. 16, in order, those with notes

    int notesInFile() const noexcept { return notes + notesOutside + notesUnheard; }
};

/// Keys are MIDI numbers. Keys that nobody releases go up with the last event. Threading: [control].
MidiPhrase phraseOf (const StandardMidiFile& file, const ChannelCompasses& channels);

} // namespace stopwright

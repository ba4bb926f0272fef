// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

namespace stopwright
{

/// What one tick of a MIDI file lasts: part of a quarter note, whose length the tempo states, or part of a film frame.
struct MidiTimeBase
{
    int ticksPerQuarter = 0;     ///< 0 when time is counted in frames
    double ticksPerSecond = 0.0; ///< when time is counted in frames
};

struct MidiTempo
{
    std::int64_t tick = 0;
    int microsecondsPerQuarter = 500000;
};

struct MidiKeyEvent
{
    static constexpr int allKeys = -1;

    std::int64_t tick = 0;
    int channel = 0; ///< 0 .. 15
    int key = 0;     ///< 0 .. 127, or allKeys in a release
    bool down = false;
};

/// The swell shoe, moved by controller 11 (expression).
/// Source: MIDI 1.0 Detailed Specification, MIDI Manufacturers Association, 1996, table III
struct MidiSwellEvent
{
    static constexpr int open = 127;

    std::int64_t tick = 0;
    int channel = 0;     ///< 0 .. 15
    int position = open; ///< 0 closed .. 127 open
};

/// The keys, swells and tempos of a standard MIDI file, all tracks together in time order (of events at one time, in the order of
/// the file). What an organ has no use for (velocity, programs, bends) is left behind.
struct StandardMidiFile
{
    MidiTimeBase timeBase;
    std::vector<MidiTempo> tempos;
    std::vector<MidiKeyEvent> keys;
    std::vector<MidiSwellEvent> swells;
    std::int64_t endTick = 0; ///< where the longest track ends
};

/// Reads format 0 or 1. The bytes are untrusted: what does not keep to the format is refused with the place where it
/// breaks it, and nothing is read past a stated length. Unknown chunks are skipped, as the format asks.
/// Threading: [control]. Fails: DocumentError, with `origin` in front.
/// Source: Standard MIDI Files 1.0, MIDI Manufacturers Association, 1988 (RP-001)
StandardMidiFile parseMidiFile (std::string_view bytes, std::string_view origin);

} // namespace stopwright

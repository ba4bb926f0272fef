// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/StandardMidiFile.h"

#include "Command/MidiBytes.h"
#include "Command/MidiTrack.h"

#include <algorithm>
#include <string>

namespace stopwright
{

namespace
{

constexpr std::size_t chunkHeadBytes = 8;

/// Frames a second of the codes 24, 25, 29 (drop-frame, 30/1.001) and 30.
double framesPerSecond (MidiBytes& header, int code)
{
    constexpr double dropFrame = 30.0 / 1.001;
    switch (code)
    {
        case 24:
            return 24.0;
        case 25:
            return 25.0;
        case 29:
            return dropFrame;
        case 30:
            return 30.0;
        default:
            header.refuse ("the time code counts " + std::to_string (code)
                           + " frames a second; only 24, 25, 29 and 30 exist.");
    }
}

MidiTimeBase readTimeBase (MidiBytes& header)
{
    constexpr int frameBit = 0x80;
    constexpr int byteValues = 0x100;
    const int high = header.byte();
    const int low = header.byte();
    if ((high & frameBit) == 0 && high * byteValues + low != 0)
        return { high * byteValues + low, 0.0 };
    if ((high & frameBit) != 0 && low != 0)
        return { 0, framesPerSecond (header, byteValues - high) * low };
    header.refuse ("the file says that no time passes in a tick; it is damaged.");
}

struct Header
{
    MidiTimeBase timeBase;
    std::uint32_t tracks = 0;
};

Header readHeader (MidiBytes& file)
{
    constexpr std::size_t leastLength = 6;
    if (file.remaining() < chunkHeadBytes + leastLength || file.take (4) != "MThd")
        file.refuse ("this is no standard MIDI file: it does not begin with MThd.");
    const auto length = file.number (4);
    if (length < leastLength)
        file.refuse ("the header of the MIDI file is too short.");

    auto header = file.part (length);
    const auto format = header.number (2);
    if (format > 1)
        header.refuse ("the MIDI file is of format " + std::to_string (format)
                       + "; save it as format 0 or 1, one piece of music.");
    const auto tracks = header.number (2);
    if (tracks == 0 || (format == 0 && tracks != 1))
        header.refuse ("the MIDI file says that it has " + std::to_string (tracks)
                       + " tracks, which its format does not allow.");
    return { readTimeBase (header), tracks };
}

} // namespace

StandardMidiFile parseMidiFile (std::string_view bytes, std::string_view origin)
{
    MidiBytes file (bytes, std::string (origin));
    const auto header = readHeader (file);

    StandardMidiFile result;
    result.timeBase = header.timeBase;
    for (std::uint32_t track = 0; track < header.tracks;)
    {
        if (file.remaining() < chunkHeadBytes)
            file.refuse ("the MIDI file has " + std::to_string (track) + " of the " + std::to_string (header.tracks)
                         + " tracks it states; it was probably cut off.");
        const auto kind = file.take (4);
        auto chunk = file.part (file.number (4));
        if (kind != "MTrk")
            continue;
        readMidiTrack (chunk, result);
        ++track;
    }

    const auto earlier = [] (const auto& left, const auto& right) { return left.tick < right.tick; };
    std::stable_sort (result.keys.begin(), result.keys.end(), earlier);
    std::stable_sort (result.swells.begin(), result.swells.end(), earlier);
    std::stable_sort (result.tempos.begin(), result.tempos.end(), earlier);
    return result;
}

} // namespace stopwright

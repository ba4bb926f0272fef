// SPDX-License-Identifier: GPL-3.0-or-later
//
// stopwright-dense-midi OUT.mid ROUNDS
//
// Writes a MIDI file that asks more of an organ of two manuals and pedals (channels 1 to 3) than any player can, for the
// live test: rounds of 16 s with full chords that change eight times a second, chords struck sixteen times a second, every
// key of the organ pressed one after the other and held, and runs of clusters; the swell shoe (controller 11) never rests.

#include "Command/MidiBuilder.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>
#include <string>
#include <vector>

namespace
{

using namespace stopwright::midi;

constexpr int ticksPerSecond = 960; // 480 a quarter at 120 quarters a minute
constexpr int ticksPerQuarter = 480;
constexpr int roundTicks = 16 * ticksPerSecond;
constexpr int lowestKey = 36;
constexpr int highestManualKey = 96;
constexpr int highestPedalKey = 65;
constexpr int pedalChannel = 2; ///< counted from 0

/// Events by tick, those of one tick in the order they were added.
class Track
{
public:
    void hold (int channel, int key, int start, int end)
    {
        events_.emplace (start, bytes ({ 0x90 + channel, key, 100 }));
        events_.emplace (end, bytes ({ 0x80 + channel, key, 0 }));
        ++notes_;
    }

    void moveShoe (int tick, int position) { events_.emplace (tick, bytes ({ 0xB0, 11, position })); }

    int notes() const { return notes_; }

    std::string text() const
    {
        std::string text;
        int now = 0;
        for (const auto& [tick, event] : events_)
        {
            text += length (tick - now) + event;
            now = tick;
        }
        return track (text);
    }

private:
    /// A number of ticks, seven bits a byte.
    static std::string length (int ticks)
    {
        std::string text = bytes ({ ticks & 0x7F });
        for (ticks >>= 7; ticks > 0; ticks >>= 7)
            text = bytes ({ (ticks & 0x7F) | 0x80 }) + text;
        return text;
    }

    std::multimap<int, std::string> events_;
    int notes_ = 0;
};

int highestKey (int channel)
{
    return channel == pedalChannel ? highestPedalKey : highestManualKey;
}

/// Ten keys on each manual and two on the pedals, somewhere else for every step.
void addChord (Track& track, int step, int start, int end)
{
    for (int channel = 0; channel <= pedalChannel; ++channel)
    {
        const int count = channel == pedalChannel ? 2 : 10;
        const int span = highestKey (channel) - lowestKey + 1;
        for (int finger = 0; finger < count; ++finger)
            track.hold (channel, lowestKey + (7 * step + 3 * channel + finger * (span / count)) % span, start, end);
    }
}

void addEveryKey (Track& track, int start, int end)
{
    for (int channel = 0; channel <= pedalChannel; ++channel)
        for (int key = lowestKey; key <= highestKey (channel); ++key)
            track.hold (channel, key, start + 20 * (key - lowestKey), end);
}

void addClusters (Track& track, int start, int end)
{
    constexpr int stepTicks = ticksPerSecond / 10;
    constexpr int width = 12;
    for (int step = 0; start + (step + 1) * stepTicks <= end; ++step)
        for (int channel = 0; channel < pedalChannel; ++channel)
            for (int key = 0; key < width; ++key)
                track.hold (channel, lowestKey + (2 * step) % (highestManualKey - lowestKey - width) + key,
                            start + step * stepTicks, start + (step + 1) * stepTicks);
}

void addRound (Track& track, int start)
{
    for (int step = 0; step < 32; ++step) // 4 s
        addChord (track, step, start + step * ticksPerSecond / 8, start + (step + 1) * ticksPerSecond / 8);
    start += 4 * ticksPerSecond;
    for (int step = 0; step < 64; ++step) // 4 s
        addChord (track, step / 8, start + step * ticksPerSecond / 16, start + step * ticksPerSecond / 16 + 30);
    start += 4 * ticksPerSecond;
    addEveryKey (track, start, start + 5 * ticksPerSecond);
    start += 5 * ticksPerSecond;
    addClusters (track, start, start + 3 * ticksPerSecond);
}

} // namespace

int main (int argumentCount, char** arguments)
{
    const int rounds = argumentCount == 3 ? std::atoi (arguments[2]) : 0;
    if (rounds < 1)
    {
        std::fprintf (stderr, "usage: stopwright-dense-midi OUT.mid ROUNDS\n");
        return 2;
    }
    Track track;
    for (int round = 0; round < rounds; ++round)
        addRound (track, round * roundTicks);
    for (int tick = 0; tick < rounds * roundTicks; tick += ticksPerSecond / 50) // down and up again every two seconds
        track.moveShoe (tick, std::abs (127 - tick * 127 / ticksPerSecond % 254));
    track.moveShoe (rounds * roundTicks, 127);

    std::ofstream file (arguments[1], std::ios::binary);
    file << header (0, 1, ticksPerQuarter) << track.text();
    if (! file.flush())
    {
        std::fprintf (stderr, "stopwright-dense-midi: %s cannot be written.\n", arguments[1]);
        return 1;
    }
    std::printf ("seconds %d notes %d\n", rounds * roundTicks / ticksPerSecond, track.notes());
    return 0;
}

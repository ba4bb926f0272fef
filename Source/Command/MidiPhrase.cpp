// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/MidiPhrase.h"

#include "Command/TempoMap.h"

#include <algorithm>
#include <bitset>

namespace stopwright
{

namespace
{

constexpr int keyCount = 128;

/// Which keys each channel holds down, and the phrase that comes of it.
class Manuals
{
public:
    explicit Manuals (MidiPhrase& result) : result_ (result) {}

    void press (double seconds, int channel, int key)
    {
        change (seconds, channel, key, true);
        ++result_.notes;
    }

    void release (double seconds, int channel, int key) { change (seconds, channel, key, false); }

    void releaseAll (double seconds, int channel)
    {
        for (int key = 0; key < keyCount; ++key)
            release (seconds, channel, key);
    }

    bool isHeld() const
    {
        return std::ranges::any_of (held_, [] (const auto& keys) { return keys.any(); });
    }

private:
    void change (double seconds, int channel, int key, bool down)
    {
        auto held = held_[static_cast<std::size_t> (channel)][static_cast<std::size_t> (key)];
        if (held == down)
            return;
        held = down;
        result_.phrase.keys.push_back ({ seconds, key, down, Keyboard::ofChannel (channel + 1) });
    }

    MidiPhrase& result_;
    std::array<std::bitset<keyCount>, Keyboard::midiChannels> held_ {};
};

void addUnheard (int channel, MidiPhrase& result)
{
    ++result.notesUnheard;
    auto& channels = result.unheardChannels;
    const auto place = std::ranges::lower_bound (channels, channel + 1);
    if (place == channels.end() || *place != channel + 1)
        channels.insert (place, channel + 1);
}

void addKeys (const StandardMidiFile& file,
              const TempoMap& tempos,
              const ChannelCompasses& channels,
              MidiPhrase& result)
{
    Manuals manuals (result);
    for (const auto& event : file.keys)
    {
        const double seconds = tempos.secondsAt (event.tick);
        const auto& compass = channels[static_cast<std::size_t> (event.channel)];
        result.phrase.seconds = seconds;
        if (event.key == MidiKeyEvent::allKeys)
            manuals.releaseAll (seconds, event.channel);
        else if (! compass && event.down)
            addUnheard (event.channel, result);
        else if (compass && (event.key < compass->lowestKey || event.key > compass->highestKey))
            result.notesOutside += event.down ? 1 : 0;
        else if (event.down)
            manuals.press (seconds, event.channel, event.key);
        else
            manuals.release (seconds, event.channel, event.key);
    }
    // A key that is never let go sounds to the end of the file.
    if (manuals.isHeld())
        result.phrase.seconds = std::max (result.phrase.seconds, result.fileSeconds);
    for (int channel = 0; channel < Keyboard::midiChannels; ++channel)
        manuals.releaseAll (result.phrase.seconds, channel);
}

} // namespace

ChannelCompasses channelsOfOne (const Compass& compass)
{
    ChannelCompasses channels;
    channels.fill (compass);
    return channels;
}

ChannelCompasses channelsOf (const Instrument& instrument)
{
    const auto compassWith = [&] (std::optional<int> channel) -> std::optional<Compass>
    {
        const auto found = std::ranges::find (instrument.divisions, channel, &Division::midiChannel);
        if (found == instrument.divisions.end())
            return {};
        return Compass { found->lowestKey, found->highestKey };
    };
    ChannelCompasses channels;
    for (int channel = 1; channel <= Keyboard::midiChannels; ++channel)
    {
        const auto claimed = compassWith (channel);
        channels[static_cast<std::size_t> (channel - 1)] = claimed ? claimed : compassWith (std::nullopt);
    }
    return channels;
}

MidiPhrase phraseOf (const StandardMidiFile& file, const ChannelCompasses& channels)
{
    const TempoMap tempos (file);
    MidiPhrase result;
    result.fileSeconds = tempos.secondsAt (file.endTick);
    addKeys (file, tempos, channels, result);
    for (const auto& swell : file.swells)
        if (channels[static_cast<std::size_t> (swell.channel)])
            result.phrase.swells.push_back (
                { tempos.secondsAt (swell.tick), static_cast<double> (swell.position) / MidiSwellEvent::open });
    return result;
}

} // namespace stopwright

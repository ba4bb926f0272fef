// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/MidiPhrase.h"

#include "Command/TempoMap.h"

#include <algorithm>
#include <array>

namespace stopwright
{

namespace
{

constexpr int keyCount = 128;

/// Which channels hold each key down, and the phrase that comes of it.
class Manual
{
public:
    explicit Manual (MidiPhrase& result) : result_ (result) {}

    void press (double seconds, int channel, int key)
    {
        auto& holders = holders_[static_cast<std::size_t> (key)];
        if (holders == 0)
            result_.phrase.keys.push_back ({ seconds, key, true });
        holders |= bit (channel);
        ++result_.notes;
    }

    void release (double seconds, int channel, int key)
    {
        auto& holders = holders_[static_cast<std::size_t> (key)];
        if (holders == 0)
            return;
        holders &= ~bit (channel);
        if (holders == 0)
            result_.phrase.keys.push_back ({ seconds, key, false });
    }

    void releaseAll (double seconds, int channel)
    {
        for (int key = 0; key < keyCount; ++key)
            release (seconds, channel, key);
    }

    bool isHeld() const
    {
        return std::any_of (holders_.begin(), holders_.end(), [] (unsigned holders) { return holders != 0; });
    }

private:
    static unsigned bit (int channel) { return 1U << static_cast<unsigned> (channel); }

    MidiPhrase& result_;
    std::array<unsigned, keyCount> holders_ {};
};

} // namespace

MidiPhrase phraseOf (const StandardMidiFile& file, int lowestKey, int highestKey)
{
    constexpr int channels = 16;
    const TempoMap tempos (file);
    MidiPhrase result;
    Manual manual (result);

    for (const auto& event : file.keys)
    {
        const double seconds = tempos.secondsAt (event.tick);
        result.phrase.seconds = seconds;
        if (event.key == MidiKeyEvent::allKeys)
            manual.releaseAll (seconds, event.channel);
        else if (event.key < lowestKey || event.key > highestKey)
            result.notesLeftOut += event.down ? 1 : 0;
        else if (event.down)
            manual.press (seconds, event.channel, event.key);
        else
            manual.release (seconds, event.channel, event.key);
    }
    // A key that is never let go sounds to the end of the file.
    if (manual.isHeld())
        result.phrase.seconds = std::max (result.phrase.seconds, tempos.secondsAt (file.endTick));
    for (int channel = 0; channel < channels; ++channel)
        manual.releaseAll (result.phrase.seconds, channel);
    return result;
}

} // namespace stopwright

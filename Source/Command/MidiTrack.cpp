// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/MidiTrack.h"

namespace stopwright
{

namespace
{

// Status bytes: a kind in the upper half, for most of them a channel in the lower.
constexpr int statusBit = 0x80;
constexpr int kindBits = 0xF0;
constexpr int channelBits = 0x0F;
constexpr int noteOff = 0x80;
constexpr int noteOn = 0x90;
constexpr int controlChange = 0xB0;
constexpr int programChange = 0xC0;
constexpr int channelPressure = 0xD0;
constexpr int systemExclusive = 0xF0;
constexpr int escape = 0xF7;
constexpr int meta = 0xFF;

constexpr int metaEndOfTrack = 0x2F;
constexpr int metaTempo = 0x51;
constexpr int expression = 11;
constexpr int allSoundOff = 120;
constexpr int allNotesOff = 123;

class TrackReader
{
public:
    TrackReader (MidiBytes& bytes, StandardMidiFile& file) : bytes_ (bytes), file_ (file) {}

    void read()
    {
        while (! bytes_.atEnd() && ! ended_)
        {
            tick_ += bytes_.variableLength();
            readEvent();
        }
        file_.endTick = std::max (file_.endTick, tick_);
    }

private:
    void readEvent()
    {
        const int next = bytes_.peek();
        if ((next & statusBit) == 0)
            return readMessage (runningStatus_);

        bytes_.byte();
        if (next == meta)
            return readMeta();
        if (next == systemExclusive || next == escape)
        {
            bytes_.take (bytes_.variableLength());
            return;
        }
        if ((next & kindBits) == systemExclusive)
            bytes_.refuse (
                "a system message stands in a track, where the format allows none; the MIDI file is damaged.");
        runningStatus_ = next;
        readMessage (next);
    }

    void readMeta()
    {
        constexpr std::size_t tempoBytes = 3;
        const int kind = bytes_.byte();
        auto content = bytes_.part (bytes_.variableLength());
        ended_ = kind == metaEndOfTrack;
        if (kind != metaTempo)
            return;
        if (content.remaining() != tempoBytes)
            bytes_.refuse ("a tempo has the wrong length; the MIDI file is damaged.");
        const auto microseconds = content.number (tempoBytes);
        if (microseconds == 0)
            bytes_.refuse ("a tempo says that a quarter note takes no time; the MIDI file is damaged.");
        file_.tempos.push_back ({ tick_, static_cast<int> (microseconds) });
    }

    void readMessage (int status)
    {
        if (status == 0)
            bytes_.refuse ("a track begins with data that belong to no message; the MIDI file is damaged.");
        const int kind = status & kindBits;
        const int channel = status & channelBits;
        const int first = bytes_.dataByte();
        if (kind == programChange || kind == channelPressure)
            return;
        const int second = bytes_.dataByte();

        if (kind == noteOff || kind == noteOn)
            file_.keys.push_back ({ tick_, channel, first, kind == noteOn && second != 0 });
        else if (kind == controlChange && first == expression)
            file_.swells.push_back ({ tick_, channel, second });
        else if (kind == controlChange && (first == allSoundOff || first >= allNotesOff))
            file_.keys.push_back ({ tick_, channel, MidiKeyEvent::allKeys, false });
    }

    MidiBytes& bytes_;
    StandardMidiFile& file_;
    std::int64_t tick_ = 0;
    int runningStatus_ = 0;
    bool ended_ = false;
};

} // namespace

void readMidiTrack (MidiBytes& track, StandardMidiFile& file)
{
    TrackReader (track, file).read();
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
//
// The own reader of MIDI files against JUCE's, which knows nothing of it.
#include "Command/MidiPhrase.h"
#include "Command/ProgramRun.h"
#include "Organ/DocumentFile.h"
#include "Support/Random.h"

#include <gtest/gtest.h>

#include <juce_audio_basics/juce_audio_basics.h>

namespace stopwright
{

namespace
{

constexpr Compass everyKey { 0, 127 };

struct Strike
{
    double seconds = 0.0;
    int key = 0;
};

std::vector<Strike> strikesByJuce (const std::string& bytes)
{
    juce::MemoryInputStream stream (bytes.data(), bytes.size(), false);
    juce::MidiFile file;
    EXPECT_TRUE (file.readFrom (stream));
    file.convertTimestampTicksToSeconds();
    juce::MidiMessageSequence all;
    for (int track = 0; track < file.getNumTracks(); ++track)
        all.addSequence (*file.getTrack (track), 0.0);

    std::vector<Strike> strikes;
    for (const auto* const event : all)
        if (event->message.isNoteOn())
            strikes.push_back ({ event->message.getTimeStamp(), event->message.getNoteNumber() });
    return strikes;
}

void expectSameStrikes (const std::string& bytes)
{
    const auto wanted = strikesByJuce (bytes);
    std::vector<Strike> found;
    for (const auto& event : phraseOf (parseMidiFile (bytes, "test.mid"), channelsOfOne (everyKey)).phrase.keys)
        if (event.down)
            found.push_back ({ event.seconds, event.key });
    ASSERT_EQ (found.size(), wanted.size());
    for (std::size_t i = 0; i < found.size(); ++i)
    {
        EXPECT_EQ (found[i].key, wanted[i].key) << "strike " << i;
        EXPECT_NEAR (found[i].seconds, wanted[i].seconds, 1e-9) << "strike " << i;
    }
}

/// Three tracks with tempo changes, every key struck once at a time of its own.
std::string writtenByJuce (Random& random)
{
    juce::MidiFile file;
    constexpr int ticksPerQuarter = 480;
    file.setTicksPerQuarterNote (ticksPerQuarter);
    int tick = 0;
    for (int track = 0; track < 3; ++track)
    {
        juce::MidiMessageSequence sequence;
        for (int note = 0; note < 40; ++note)
        {
            tick += random.integer (1, 2000);
            const int key = 3 * note + track;
            if (random.chance (0.2))
                sequence.addEvent (juce::MidiMessage::tempoMetaEvent (random.integer (200000, 900000)), tick);
            sequence.addEvent (juce::MidiMessage::noteOn (track + 1, key, 0.7F), tick);
            sequence.addEvent (juce::MidiMessage::noteOff (track + 1, key), tick + random.integer (1, 500));
        }
        file.addTrack (sequence);
        tick = track + 1;
    }
    juce::MemoryOutputStream stream;
    file.writeTo (stream, 1);
    return { static_cast<const char*> (stream.getData()), stream.getDataSize() };
}

} // namespace

TEST (MidiReference, DemonstrationPhraseReadsTheSame)
{
    const auto bytes = readDocumentFile (preset ("DemonstrationPhrase.mid"));
    EXPECT_GT (strikesByJuce (bytes).size(), 50U);
    expectSameStrikes (bytes);
}

TEST (MidiReference, RandomFilesReadTheSame)
{
    Random random (7);
    for (int round = 0; round < 20; ++round)
        expectSameStrikes (writtenByJuce (random));
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/MidiPhrase.h"
#include "Command/MidiBuilder.h"
#include "Command/TempoMap.h"
#include "Sound/InstrumentVoice.h"

#include <gtest/gtest.h>

namespace stopwright
{

using namespace midi;

namespace
{

constexpr Compass manual { 36, 96 };
constexpr Compass pedal { 36, 65 };

std::string tempo (int microseconds)
{
    return bytes ({ 0xFF, 0x51, 3, microseconds >> 16, (microseconds >> 8) & 0xFF, microseconds & 0xFF });
}

MidiPhrase phraseOfTrack (const std::string& events, const ChannelCompasses& channels = channelsOfOne (manual))
{
    return phraseOf (parseMidiFile (header (0, 1, 96) + track (events), "test.mid"), channels);
}

/// Two manuals that hear channels 2 and 3, and what else there is.
Instrument organ (const std::vector<Division>& more)
{
    Instrument instrument;
    instrument.divisions = { { "Upper", 36, 96, 3 }, { "Lower", 36, 96, 2 } };
    instrument.divisions.insert (instrument.divisions.end(), more.begin(), more.end());
    return instrument;
}

} // namespace

TEST (TempoMap, FollowsEveryChange)
{
    // 96 ticks at 120 a minute (0.5 s), 96 at 60 (1 s), then 240 a minute (0.25 s a quarter).
    StandardMidiFile file;
    file.timeBase.ticksPerQuarter = 96;
    file.tempos = { { 96, 1000000 }, { 192, 700000 }, { 192, 250000 } };
    const TempoMap map (file);
    EXPECT_DOUBLE_EQ (map.secondsAt (0), 0.0);
    EXPECT_DOUBLE_EQ (map.secondsAt (48), 0.25);
    EXPECT_DOUBLE_EQ (map.secondsAt (96), 0.5);
    EXPECT_DOUBLE_EQ (map.secondsAt (144), 1.0);
    EXPECT_DOUBLE_EQ (map.secondsAt (192), 1.5);
    EXPECT_DOUBLE_EQ (map.secondsAt (384), 2.0) << "of two tempos at one time the last holds";
}

TEST (TempoMap, FramesDoNotCareForTempos)
{
    StandardMidiFile file;
    file.timeBase.ticksPerSecond = 1000.0;
    file.tempos = { { 0, 1 } };
    EXPECT_DOUBLE_EQ (TempoMap (file).secondsAt (1500), 1.5);
}

TEST (MidiPhrase, TimesAreSeconds)
{
    const auto played = phraseOfTrack (bytes ({ 0 }) + tempo (1000000) + bytes ({ 96, 0x90, 60, 1, 48, 0x80, 60, 0 }));
    EXPECT_EQ (played.notes, 1);
    ASSERT_EQ (played.phrase.keys.size(), 2U);
    EXPECT_DOUBLE_EQ (played.phrase.keys[0].seconds, 1.0);
    EXPECT_TRUE (played.phrase.keys[0].down);
    EXPECT_DOUBLE_EQ (played.phrase.keys[1].seconds, 1.5);
    EXPECT_DOUBLE_EQ (played.phrase.seconds, 1.5);
}

TEST (MidiPhrase, EachChannelIsAKeyboard)
{
    const auto played = phraseOfTrack (bytes ({ 0, 0x90, 60, 1, 10, 0x9F, 60, 1, 10, 0x80, 60, 0, 10, 0x8F, 60, 0 }));
    ASSERT_EQ (played.phrase.keys.size(), 4U);
    for (const std::size_t index : { 0U, 2U })
        EXPECT_EQ (played.phrase.keys[index].keyboard, Keyboard::ofChannel (1));
    for (const std::size_t index : { 1U, 3U })
        EXPECT_EQ (played.phrase.keys[index].keyboard, Keyboard::ofChannel (16));
    EXPECT_FALSE (played.phrase.keys[2].down);
    EXPECT_DOUBLE_EQ (played.phrase.keys[3].seconds, 30.0 / 192.0);
}

TEST (MidiPhrase, ARepeatedStrikeIsOneHeldKey)
{
    const auto played = phraseOfTrack (bytes ({ 0, 0x90, 60, 1, 10, 60, 1, 10, 60, 0, 10, 60, 0 }));
    ASSERT_EQ (played.phrase.keys.size(), 2U);
    EXPECT_FALSE (played.phrase.keys[1].down);
    EXPECT_DOUBLE_EQ (played.phrase.keys[1].seconds, 20.0 / 192.0);
}

TEST (MidiPhrase, ReleasesWhatIsStillHeld)
{
    const auto allOff =
        phraseOfTrack (bytes ({ 0, 0x90, 60, 1, 0, 64, 1, 0, 0x91, 67, 1, 96, 0xB0, 123, 0, 96, 0x91, 67, 0 }));
    ASSERT_EQ (allOff.phrase.keys.size(), 6U);
    EXPECT_DOUBLE_EQ (allOff.phrase.keys[3].seconds, 0.5);
    EXPECT_DOUBLE_EQ (allOff.phrase.keys[5].seconds, 1.0);

    const auto never = phraseOfTrack (bytes ({ 0, 0x90, 60, 1, 96, 64, 1 }));
    ASSERT_EQ (never.phrase.keys.size(), 4U);
    EXPECT_FALSE (never.phrase.keys[3].down);
    EXPECT_DOUBLE_EQ (never.phrase.keys[3].seconds, 0.5);

    // A text event stands at the very end, a second after the key.
    const auto toTheEnd = phraseOfTrack (bytes ({ 0, 0x90, 60, 1, 0x81, 0x40, 0xFF, 1, 0 }));
    EXPECT_DOUBLE_EQ (toTheEnd.phrase.seconds, 1.0);
    EXPECT_DOUBLE_EQ (toTheEnd.phrase.keys.back().seconds, 1.0);
}

TEST (MidiPhrase, LeavesOutKeysBeyondTheCompass)
{
    const auto played = phraseOfTrack (bytes ({ 0, 0x90, 35, 1, 0, 36, 1, 0, 96, 1, 0, 97, 1, 10, 35, 0 }));
    EXPECT_EQ (played.notes, 2);
    EXPECT_EQ (played.notesOutside, 2);
    EXPECT_EQ (played.notesUnheard, 0);
    EXPECT_EQ (played.phrase.keys.size(), 4U);
}

TEST (MidiPhrase, CountsTheNotesThatNothingHears)
{
    auto channels = channelsOfOne (manual);
    channels[3].reset();
    channels[6].reset();
    const auto played = phraseOfTrack (
        bytes ({ 0, 0x96, 60, 1, 0, 0x93, 60, 1, 0, 0x90, 60, 1, 10, 0x86, 60, 0, 0, 0x83, 60, 0, 0, 0x96, 61, 1 }),
        channels);
    EXPECT_EQ (played.notes, 1);
    EXPECT_EQ (played.notesUnheard, 3);
    EXPECT_EQ (played.notesInFile(), 4);
    EXPECT_EQ (played.unheardChannels, (std::vector<int> { 4, 7 }));
    ASSERT_EQ (played.phrase.keys.size(), 2U);
    EXPECT_EQ (played.phrase.keys[0].keyboard, Keyboard::ofChannel (1));
}

TEST (MidiPhrase, MovesTheSwellShoeOnChannelsThatAreHeard)
{
    auto channels = channelsOfOne (manual);
    channels[1].reset();
    const auto played = phraseOfTrack (
        bytes ({ 0, 0xB0, 11, 127, 0, 0x90, 60, 1, 96, 0xB0, 11, 0, 0, 0xB1, 11, 64, 0, 7, 90, 96, 0x80, 60, 0 }),
        channels);
    ASSERT_EQ (played.phrase.swells.size(), 2U);
    EXPECT_DOUBLE_EQ (played.phrase.swells[0].seconds, 0.0);
    EXPECT_DOUBLE_EQ (played.phrase.swells[0].position, 1.0);
    EXPECT_DOUBLE_EQ (played.phrase.swells[1].seconds, 0.5);
    EXPECT_DOUBLE_EQ (played.phrase.swells[1].position, 0.0);
    EXPECT_DOUBLE_EQ (played.phrase.seconds, 1.0);
}

TEST (ChannelCompasses, AreThoseOfTheDivisionsThatHearThem)
{
    const auto closed = channelsOf (organ ({}));
    EXPECT_EQ (closed[1], manual);
    EXPECT_EQ (closed[2], manual);
    EXPECT_FALSE (closed[0]);
    EXPECT_FALSE (closed[15]);

    // The first that states no channel hears what nobody claims; a second one hears nothing.
    const auto open = channelsOf (organ ({ { "Pedal", 36, 65, {} }, { "Echo", 48, 96, {} } }));
    EXPECT_EQ (open[0], pedal);
    EXPECT_EQ (open[1], manual);
    EXPECT_EQ (open[15], pedal);
}

// What the phrase leaves out must be what the voice does not hear.
TEST (ChannelCompasses, AgreeWithTheVoice)
{
    for (const auto& instrument : { organ ({}), organ ({ { "Pedal", 37, 65, {} }, { "Echo", 48, 96, 16 } }) })
    {
        const InstrumentVoice voice (instrument, {}, StreamSpec {});
        const auto channels = channelsOf (instrument);
        for (int channel = 1; channel <= Keyboard::midiChannels; ++channel)
        {
            const int division = voice.divisionOfChannel (channel);
            const auto& compass = channels[static_cast<std::size_t> (channel - 1)];
            ASSERT_EQ (compass.has_value(), division >= 0) << channel;
            if (! compass)
                continue;
            EXPECT_EQ (compass->lowestKey, instrument.divisions[static_cast<std::size_t> (division)].lowestKey);
        }
    }
}

} // namespace stopwright

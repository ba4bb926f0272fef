// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/MidiPhrase.h"
#include "Command/MidiBuilder.h"
#include "Command/TempoMap.h"

#include <gtest/gtest.h>

namespace stopwright
{

using namespace midi;

namespace
{

constexpr int lowest = 36;
constexpr int highest = 96;

std::string tempo (int microseconds)
{
    return bytes ({ 0xFF, 0x51, 3, microseconds >> 16, (microseconds >> 8) & 0xFF, microseconds & 0xFF });
}

MidiPhrase phraseOfTrack (const std::string& events)
{
    return phraseOf (parseMidiFile (header (0, 1, 96) + track (events), "test.mid"), lowest, highest);
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

TEST (MidiPhrase, AKeyStaysDownUntilTheLastChannelLetsGo)
{
    const auto played = phraseOfTrack (bytes ({ 0, 0x90, 60, 1, 10, 0x91, 60, 1, 10, 0x80, 60, 0, 10, 0x81, 60, 0 }));
    ASSERT_EQ (played.phrase.keys.size(), 2U);
    EXPECT_TRUE (played.phrase.keys[0].down);
    EXPECT_DOUBLE_EQ (played.phrase.keys[1].seconds, 30.0 / 192.0);
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
    EXPECT_EQ (played.notesLeftOut, 2);
    EXPECT_EQ (played.phrase.keys.size(), 4U);
}

} // namespace stopwright

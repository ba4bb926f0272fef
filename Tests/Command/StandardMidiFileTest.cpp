// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/StandardMidiFile.h"
#include "Command/MidiBuilder.h"
#include "Organ/DocumentError.h"
#include "Support/Random.h"

#include <gtest/gtest.h>

namespace stopwright
{

using namespace midi;

namespace
{

const std::string oneNote = bytes ({ 0, 0x90, 60, 100, 96, 0x80, 60, 64 });

std::string refusalOf (const std::string& file)
{
    try
    {
        parseMidiFile (file, "test.mid");
    }
    catch (const DocumentError& fault)
    {
        return fault.what();
    }
    return "accepted";
}

} // namespace

TEST (StandardMidiFile, ReadsNotesOfOneTrack)
{
    const auto file = parseMidiFile (header (0, 1, 96) + track (oneNote), "test.mid");
    EXPECT_EQ (file.timeBase.ticksPerQuarter, 96);
    ASSERT_EQ (file.keys.size(), 2U);
    EXPECT_EQ (file.keys[0].key, 60);
    EXPECT_TRUE (file.keys[0].down);
    EXPECT_EQ (file.keys[1].tick, 96);
    EXPECT_FALSE (file.keys[1].down);
}

TEST (StandardMidiFile, RunningStatusAndVelocityZero)
{
    // Status once, then three messages by running status; the third has velocity 0 and releases. A meta event between.
    const auto events =
        bytes ({ 0, 0x93, 60, 100, 10, 62, 100, 10, 0xFF, 0x01, 2, 'h', 'i', 0, 60, 0, 0x81, 0x48, 62, 0 });
    const auto file = parseMidiFile (header (0, 1, 96) + track (events), "test.mid");
    ASSERT_EQ (file.keys.size(), 4U);
    EXPECT_EQ (file.keys[1].key, 62);
    EXPECT_EQ (file.keys[1].tick, 10);
    EXPECT_FALSE (file.keys[2].down);
    EXPECT_EQ (file.keys[2].tick, 20);
    EXPECT_EQ (file.keys[3].tick, 20 + 200) << "0x81 0x48 is 200";
    EXPECT_EQ (file.keys[3].channel, 3);
}

TEST (StandardMidiFile, MergesTracksInTimeOrder)
{
    const auto second = bytes ({ 48, 0x91, 72, 1, 24, 0x81, 72, 0 });
    const auto file = parseMidiFile (header (1, 2, 96) + track (oneNote) + track (second), "test.mid");
    ASSERT_EQ (file.keys.size(), 4U);
    EXPECT_EQ (file.keys[1].key, 72);
    EXPECT_EQ (file.keys[2].key, 72);
    EXPECT_EQ (file.keys[3].key, 60);
}

TEST (StandardMidiFile, ReadsTheSwellShoe)
{
    // Two moves by running status, in two tracks; controller 7 is none.
    const auto first = bytes ({ 0, 0xB2, 11, 127, 96, 11, 0, 0, 7, 100 });
    const auto second = bytes ({ 48, 0xBF, 11, 64 });
    const auto file = parseMidiFile (header (1, 2, 96) + track (first) + track (second), "test.mid");
    EXPECT_TRUE (file.keys.empty());
    ASSERT_EQ (file.swells.size(), 3U);
    EXPECT_EQ (file.swells[0].position, MidiSwellEvent::open);
    EXPECT_EQ (file.swells[0].channel, 2);
    EXPECT_EQ (file.swells[1].position, 64);
    EXPECT_EQ (file.swells[1].tick, 48);
    EXPECT_EQ (file.swells[1].channel, 15);
    EXPECT_EQ (file.swells[2].position, 0);
}

TEST (StandardMidiFile, SkipsWhatAnOrganHasNoUseFor)
{
    const auto events =
        bytes ({ 0, 0xF0, 3, 1, 2, 0xF7, 0, 0xC0, 5, 0, 0xD0, 5, 0, 0xE0, 0, 64, 0, 0xA0, 60, 1, 0, 0xB0, 64, 127 })
        + oneNote + bytes ({ 0, 0xF7, 1, 0xF8, 0, 0xFF, 0x7F, 1, 9, 0, 0xB0, 123, 0 });
    const auto longHeader = chunk ("MThd", bigEndian (0, 2) + bigEndian (1, 2) + bigEndian (96, 2) + "more");
    const auto file = parseMidiFile (longHeader + chunk ("XFIH", "unknown") + track (events) + "trailing", "test.mid");
    ASSERT_EQ (file.keys.size(), 3U);
    EXPECT_EQ (file.keys[2].key, MidiKeyEvent::allKeys);
}

TEST (StandardMidiFile, FilmFrames)
{
    const auto ticksPerSecond = [] (unsigned high, unsigned low)
    { return parseMidiFile (header (0, 1, high << 8U | low) + track (oneNote), "test.mid").timeBase.ticksPerSecond; };
    EXPECT_DOUBLE_EQ (ticksPerSecond (256 - 25, 40), 1000.0);
    EXPECT_DOUBLE_EQ (ticksPerSecond (256 - 24, 4), 96.0);
    EXPECT_DOUBLE_EQ (ticksPerSecond (256 - 30, 80), 2400.0);
    EXPECT_DOUBLE_EQ (ticksPerSecond (256 - 29, 100), 3000.0 / 1.001);
}

TEST (StandardMidiFile, RefusesWhatBreaksTheFormat)
{
    const auto good = header (0, 1, 96) + track (oneNote);
    ASSERT_EQ (refusalOf (good), "accepted");

    const auto inTrack = [] (std::initializer_list<int> events)
    { return header (0, 1, 96) + chunk ("MTrk", bytes (events)); };
    const std::vector<std::pair<std::string, std::string>> broken {
        { "", "MThd" },
        { "MThd", "MThd" },
        { "RIFF" + good, "MThd" },
        { chunk ("MThd", "\0\0\0\1") + "0123456789", "too short" },
        { header (2, 1, 96) + track (oneNote), "format 2" },
        { header (0, 0, 96), "0 tracks" },
        { header (0, 2, 96) + track (oneNote) + track (oneNote), "2 tracks" },
        { header (1, 65535, 96) + track (oneNote), "1 of the 65535 tracks" },
        { header (0, 1, 0) + track (oneNote), "no time" },
        { header (0, 1, 0xE700) + track (oneNote), "no time" },
        { header (0, 1, 0x8001) + track (oneNote), "128 frames" },
        { header (0, 1, 96) + "MTrk" + bigEndian (0xFFFFFFFFU, 4), "beyond the end" },
        { good.substr (0, good.size() - 5), "beyond the end" },
        { inTrack ({ 0, 60, 100 }), "belong to no message" },
        { inTrack ({ 0, 0x90, 60 }), "cut off" },
        { inTrack ({ 0 }), "cut off" },
        { inTrack ({ 0, 0x90, 60, 0x90, 61, 3 }), "cut short" },
        { inTrack ({ 0x81, 0x81, 0x81, 0x81, 1, 0x90, 60, 3 }), "four bytes" },
        { inTrack ({ 0, 0xFF, 0x51, 2, 1, 1 }), "wrong length" },
        { inTrack ({ 0, 0xFF, 0x51, 3, 0, 0, 0 }), "no time" },
        { inTrack ({ 0, 0xFF, 0x01, 0xFF, 0xFF, 0xFF, 0x7F }), "beyond the end" },
        { inTrack ({ 0, 0xF0, 100, 1 }), "beyond the end" },
        { inTrack ({ 0, 0xF3, 1 }), "system message" },
        { inTrack ({ 0, 0xF8 }), "system message" },
    };
    for (const auto& [file, word] : broken)
    {
        const auto refusal = refusalOf (file);
        EXPECT_NE (refusal.find (word), std::string::npos) << "no " << word << " in: " << refusal;
        EXPECT_TRUE (refusal.starts_with ("test.mid: ")) << refusal;
    }
}

TEST (StandardMidiFile, EveryCutIsRefusedOrHarmless)
{
    const auto good = header (1, 2, 96) + track (oneNote) + track (oneNote);
    for (std::size_t length = 0; length < good.size(); ++length)
        EXPECT_NE (refusalOf (good.substr (0, length)), "accepted") << length;
}

TEST (StandardMidiFile, SurvivesRandomDamage)
{
    Random random (20240611);
    const auto good =
        header (1, 3, 96) + track (oneNote) + track (bytes ({ 0, 0xFF, 0x51, 3, 7, 0, 0 }) + oneNote) + track (oneNote);
    int accepted = 0;
    for (int round = 0; round < 20000; ++round)
    {
        auto file = good;
        for (int change = random.integer (1, 6); change > 0; --change)
            file[static_cast<std::size_t> (random.integer (0, static_cast<int> (file.size()) - 1))] =
                static_cast<char> (random.integer (0, 255));
        if (random.chance (0.2))
            file.resize (static_cast<std::size_t> (random.integer (0, static_cast<int> (file.size()))));
        const auto answer = refusalOf (file);
        accepted += answer == "accepted" ? 1 : 0;
        EXPECT_EQ (answer.find ('\n'), std::string::npos);
    }
    EXPECT_GT (accepted, 100) << "the damage is not so heavy that only the header is tested";
    EXPECT_LT (accepted, 19900);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/PracticePhrases.h"

#include <gtest/gtest.h>

#include <map>
#include <vector>

namespace stopwright
{

namespace
{

constexpr int c2 = 36;
constexpr int c7 = 96;
constexpr int pedalTop = 65; // F4, thirty pedals from C2
constexpr int keyboard = Keyboard::ofDivision (2);

} // namespace

TEST (PracticePhrases, TheScalePlaysEveryKeyOnceFromTheLowestUp)
{
    const auto phrase = PracticePhrases::scale (c2, c7, keyboard);
    std::vector<int> struck;
    for (const auto& key : phrase.keys)
    {
        EXPECT_EQ (key.keyboard, keyboard);
        if (key.down)
        {
            EXPECT_DOUBLE_EQ (key.seconds, 0.25 * static_cast<double> (struck.size())); // 240 keys a minute
            struck.push_back (key.key);
        }
    }
    ASSERT_EQ (struck.size(), 61U);
    for (std::size_t index = 0; index < struck.size(); ++index)
        EXPECT_EQ (struck[index], c2 + static_cast<int> (index));
    EXPECT_DOUBLE_EQ (phrase.seconds, 61 * 0.25);
}

TEST (PracticePhrases, OneKeyOfTheScaleIsLetGoBeforeTheNextIsStruck)
{
    const auto phrase = PracticePhrases::scale (c2, pedalTop, keyboard);
    std::map<int, double> struckAt;
    int held = 0;
    for (const auto& key : inTimeOrder (phrase).keys)
    {
        held += key.down ? 1 : -1;
        EXPECT_LE (held, 1);
        EXPECT_GE (held, 0);
        if (key.down)
            struckAt[key.key] = key.seconds;
        else
            EXPECT_NEAR (key.seconds - struckAt.at (key.key), 0.2, 1e-12) << key.key;
    }
    EXPECT_EQ (held, 0);
    EXPECT_GE (phrase.seconds, phrase.keys.back().seconds);
}

TEST (PracticePhrases, TheFullChordIsTheOneThatHeadroomIsJudgedBy)
{
    // Ten keys, C2 G2 C3 E3 G3 C4 E4 G4 C5 E5: the project's own chord of its headroom examples.
    EXPECT_EQ (PracticePhrases::fullChordKeys (c2, c7), (std::vector<int> { 36, 43, 48, 52, 55, 60, 64, 67, 72, 76 }));
}

TEST (PracticePhrases, TheFullChordStaysWithinTheCompass)
{
    EXPECT_EQ (PracticePhrases::fullChordKeys (c2, pedalTop), (std::vector<int> { 36, 43, 48, 52, 55, 60, 64 }));
    EXPECT_EQ (PracticePhrases::fullChordKeys (41, 84).front(), 48) << "from F2 the lowest C is C3";
    EXPECT_EQ (PracticePhrases::fullChordKeys (37, 44), (std::vector<int> { 37, 44 })) << "no C: from the lowest key";
    EXPECT_EQ (PracticePhrases::fullChordKeys (60, 60), (std::vector<int> { 60 }));
    for (int lowest = 0; lowest < 128; ++lowest)
        for (int highest = lowest; highest < 128; ++highest)
            for (const int key : PracticePhrases::fullChordKeys (lowest, highest))
                EXPECT_TRUE (key >= lowest && key <= highest) << lowest << ".." << highest << ": " << key;
}

TEST (PracticePhrases, TheFullChordIsHeldAndThenLetGoWhole)
{
    const auto phrase = PracticePhrases::fullChord (c2, c7, keyboard);
    ASSERT_EQ (phrase.keys.size(), 20U);
    for (const auto& key : phrase.keys)
    {
        EXPECT_EQ (key.seconds, key.down ? 0.0 : 4.0);
        EXPECT_EQ (key.keyboard, keyboard);
    }
    EXPECT_EQ (phrase.seconds, 5.0); // silence, so that a loop strikes it anew
}

} // namespace stopwright

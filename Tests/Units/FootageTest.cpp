// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/Footage.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <string>

namespace stopwright
{

namespace
{

struct Rank
{
    const char* text;
    double harmonic;
    bool isOctave;
};

// The usual ranks and the harmonic of 8 ft that each sounds: organ builders' common practice.
constexpr Rank ranks[] = {
    { "64", 0.125, true },   { "32", 0.25, true },     { "16", 0.5, true },     { "10 2/3", 0.75, false },
    { "8", 1.0, true },      { "6 2/5", 1.25, false }, { "5 1/3", 1.5, false }, { "4", 2.0, true },
    { "3 1/5", 2.5, false }, { "2 2/3", 3.0, false },  { "2", 4.0, true },      { "1 3/5", 5.0, false },
    { "1 1/3", 6.0, false }, { "1 1/7", 7.0, false },  { "1", 8.0, true },      { "8/9", 9.0, false },
    { "4/5", 10.0, false },  { "2/3", 12.0, false },   { "1/2", 16.0, true },
};

} // namespace

TEST (Footage, SoundsItsExactHarmonic)
{
    for (const auto& rank : ranks)
    {
        const auto footage = Footage::parse (rank.text);
        EXPECT_EQ (footage.harmonicOfEightFoot(), rank.harmonic) << rank.text;
        EXPECT_EQ (footage.isOctave(), rank.isOctave) << rank.text;
        EXPECT_EQ (footage.text(), rank.text);
    }
}

TEST (Footage, DefaultsToUnison)
{
    EXPECT_EQ (Footage(), Footage::parse ("8"));
    EXPECT_EQ (Footage().numerator(), 8);
    EXPECT_EQ (Footage().denominator(), 1);
}

TEST (Footage, ReadsTheSameFractionInItsManySpellings)
{
    const auto twelfth = Footage::parse ("2 2/3");
    EXPECT_EQ (twelfth.numerator(), 8);
    EXPECT_EQ (twelfth.denominator(), 3);
    for (const auto* text : { "2-2/3", "8/3", "2 2/3 ft", "2 2/3ft", "2 2/3'", "2 2/3\u2032", " 2 2/3 ", "2 4/6" })
        EXPECT_EQ (Footage::parse (text), twelfth) << text;

    EXPECT_NE (Footage::parse ("2"), twelfth);
    EXPECT_EQ (Footage::parse ("16.0"), Footage::parse ("16"));
    EXPECT_EQ (Footage::parse ("0.5"), Footage::parse ("1/2"));
    EXPECT_EQ (Footage::parse ("1.0625"), Footage::parse ("17/16")) << "decimals that are whole 16ths";
}

TEST (Footage, RefusesWhatIsNoExactFootage)
{
    for (const auto* text : { "",      "ft",    "x",         "8x",      "-8",        "2 2/", "2 /3", "2 3/2",  "2 2/0",
                              "8/0",   "0/0",   "2  2/3",    "2.667",   "2.6666667", "1.6",  "8.",   ".5",     "2 0.5",
                              "1/2/3", "99999", "1 1/99999", "8 ft ft", "inf",       "nan",  "1e1",  "2 2/3/4" })
        EXPECT_THROW (Footage::parse (text), Error) << text;
}

TEST (Footage, RefusesWhatIsOutOfRange)
{
    for (const auto* text : { "65", "64 1/64", "128", "0", "1/3", "0.25", "9999", "1/9999" })
        EXPECT_THROW (Footage::parse (text), Error) << text;
}

TEST (Footage, RefusalShowsTheTextAndTheRemedy)
{
    try
    {
        Footage::parse ("2.667");
        FAIL();
    }
    catch (const Error& error)
    {
        EXPECT_STREQ (error.what(),
                      "\"2.667\" is not a footage: write feet as a whole number or an exact fraction, as 8, 2 2/3 or "
                      "1 3/5.");
    }

    try
    {
        Footage::parse ("128");
        FAIL();
    }
    catch (const Error& error)
    {
        EXPECT_STREQ (error.what(), "A footage of \"128\" is out of range: stops run from 64 ft down to 1/2 ft.");
    }
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/Pitch.h"
#include "Units/Error.h"

#include "Support/Tolerances.h"

#include <gtest/gtest.h>

namespace stopwright
{

TEST (Pitch, ReadsNamesOfKeys)
{
    EXPECT_EQ (parseKey ("C4"), 60);
    EXPECT_EQ (parseKey ("c4"), 60);
    EXPECT_EQ (parseKey ("A4"), 69);
    EXPECT_EQ (parseKey ("F#3"), 54);
    EXPECT_EQ (parseKey ("Bb2"), 46);
    EXPECT_EQ (parseKey ("bb2"), 46);
    EXPECT_EQ (parseKey ("b2"), 47);
    EXPECT_EQ (parseKey ("F\u266f3"), 54);
    EXPECT_EQ (parseKey ("B\u266d2"), 46);
    EXPECT_EQ (parseKey ("C-1"), 0);
    EXPECT_EQ (parseKey ("G9"), 127);
    EXPECT_EQ (parseKey ("Cb4"), 59) << "spelled from its octave, sounding below it";
    EXPECT_EQ (parseKey ("B#3"), 60);
}

TEST (Pitch, RefusesWhatIsNoKey)
{
    for (const auto* text : { "",    "C",   "4",   "H4",  "C##4", "C#",      "C10", "G#9", "Cb-1", "C-2",
                              "C4 ", " C4", "C 4", "C4x", "C+4",  "\u266f4", "@4",  "`4",  "g-0x", "C4.0" })
        EXPECT_THROW (parseKey (text), Error) << text;
}

TEST (Pitch, RefusalShowsTheTextAndTheRemedy)
{
    try
    {
        parseKey ("H4");
        FAIL();
    }
    catch (const Error& error)
    {
        EXPECT_STREQ (error.what(),
                      "\"H4\" is not a key: write a note and its octave from C-1 to G9, as C4, F#3 or Bb2.");
    }
}

TEST (Pitch, EveryKeyReadsBackFromItsName)
{
    for (int key = 0; key <= 127; ++key)
        EXPECT_EQ (parseKey (keyName (key)), key);

    EXPECT_EQ (keyName (60), "C4");
    EXPECT_EQ (keyName (54), "F#3");
    EXPECT_THROW (keyName (-1), Error);
    EXPECT_THROW (keyName (128), Error);
}

// ISO 16:1975 sets A4 to 440 Hz; the others are 440 2^(n / 12), as in any table of equal temperament.
TEST (Pitch, EqualTemperamentFromA440)
{
    EXPECT_EQ (equalTemperedHz (69.0), 440.0);
    EXPECT_EQ (equalTemperedHz (57.0), 220.0);
    EXPECT_NEAR (equalTemperedHz (60.0), 261.6255653005986, 261.6 * tolerance::algebra);
    EXPECT_NEAR (equalTemperedHz (36.0), 65.40639132514966, 65.4 * tolerance::algebra);
    EXPECT_NEAR (equalTemperedHz (96.0), 2093.004522404789, 2093.0 * tolerance::algebra);
    EXPECT_EQ (equalTemperedHz (69.0, 435.0), 435.0);
    EXPECT_NEAR (equalTemperedHz (69.5), 440.0 * 1.0293022366434921, 440.0 * tolerance::algebra);
}

TEST (Pitch, CountsCents)
{
    EXPECT_EQ (centsBetween (220.0, 440.0), 1200.0);
    EXPECT_EQ (centsBetween (440.0, 220.0), -1200.0);
    // A pure fifth is 701.955 cents: Helmholtz, On the Sensations of Tone (Ellis), appendix XX.
    EXPECT_NEAR (centsBetween (2.0, 3.0), 701.955, 0.0005);
    EXPECT_NEAR (centsBetween (equalTemperedHz (60.0), equalTemperedHz (61.0)), 100.0, 1e-9);
}

} // namespace stopwright

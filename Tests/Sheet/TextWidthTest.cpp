// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/TextWidth.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

// The advance of a digit of DejaVu Sans is 1303 of 2048 units, of its bold 1425; its own font files.
TEST (TextWidth, CountsTheFontsAdvances)
{
    EXPECT_NEAR (textWidth ("4", 2048.0, false), 1303.0, 2.1);
    EXPECT_NEAR (textWidth ("47", 2048.0, true), 2.0 * 1425.0, 4.2);
    EXPECT_EQ (textWidth ("", 12.0, false), 0.0);
}

TEST (TextWidth, CountsALetterOfSeveralBytesOnce)
{
    EXPECT_DOUBLE_EQ (textWidth ("\u03a9", 10.0, false), 10.0);
}

TEST (TextWidth, PutsTheBoxWhereTheTextIsAligned)
{
    DrawnText text { { 100.0, 50.0 }, "47k", 10.0, TextAlign::right, false, Ink::ink };
    EXPECT_DOUBLE_EQ (textBox (text).right(), 100.0);
    text.align = TextAlign::centre;
    EXPECT_DOUBLE_EQ (textBox (text).x + textBox (text).width / 2.0, 100.0);
    text.align = TextAlign::left;
    EXPECT_DOUBLE_EQ (textBox (text).x, 100.0);
    EXPECT_LT (textBox (text).y, 50.0);
    EXPECT_GT (textBox (text).bottom(), 50.0);
}

} // namespace
} // namespace stopwright

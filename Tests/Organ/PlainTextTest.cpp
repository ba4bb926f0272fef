// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/PlainText.h"

#include <gtest/gtest.h>

namespace stopwright
{

TEST (PlainText, FindsTheFirstByteThatIsNotUtf8)
{
    // The Unicode Standard 15.0, table 3-7.
    EXPECT_EQ (firstByteNotUtf8 ("plain, \xC2\xB5, \xE2\x84\xA6, \xF0\x9F\x8E\xB9"), std::string_view::npos);
    EXPECT_EQ (firstByteNotUtf8 ("ab\xFFz"), 2U);
    EXPECT_EQ (firstByteNotUtf8 ("\xC0\xAF"), 0U);         // overlong
    EXPECT_EQ (firstByteNotUtf8 ("\xE0\x80\xAF"), 0U);     // overlong
    EXPECT_EQ (firstByteNotUtf8 ("\xED\xA0\x80"), 0U);     // surrogate
    EXPECT_EQ (firstByteNotUtf8 ("\xF4\x90\x80\x80"), 0U); // above U+10FFFF
    EXPECT_EQ (firstByteNotUtf8 ("ab\xE2\x84"), 2U);       // cut off
}

TEST (PlainText, CountsCharactersAndNotBytes)
{
    EXPECT_EQ (characterCount ("a\xC2\xB5\xE2\x84\xA6"), 3U);
}

TEST (PlainText, MakesForeignTextSafeForATerminal)
{
    EXPECT_EQ (printable ("R1\x1B[2J\n\xC2\x9B\x7F"), "R1?[2J???");
    EXPECT_EQ (printable ("4\xC2\xB5\xFF"), "4\xC2\xB5?");
    EXPECT_EQ (printable (std::string (1000, 'x'), 5), "xxxxx...");
    EXPECT_TRUE (hasControlCharacter ("a\tb"));
    EXPECT_FALSE (hasControlCharacter ("a\xC2\xB5"));
}

TEST (PlainText, WritesNumbersShort)
{
    EXPECT_EQ (numberText (0.1), "0.1");
    EXPECT_EQ (numberText (2.0), "2");
    EXPECT_EQ (numberText (1e300), "1e+300");
}

} // namespace stopwright

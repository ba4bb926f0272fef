// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/QuotedText.h"

#include <gtest/gtest.h>

namespace stopwright
{

TEST (QuotedText, PutsTextInQuotes)
{
    EXPECT_EQ (quotedText ("4k7"), "\"4k7\"");
    EXPECT_EQ (quotedText (""), "\"\"");
    EXPECT_EQ (quotedText ("47 k\u03a9 \u266f \U0001d11e"), "\"47 k\u03a9 \u266f \U0001d11e\"");
}

TEST (QuotedText, HidesWhatATerminalWouldObey)
{
    EXPECT_EQ (quotedText ("a\x1b[2J\n\x7f"), "\"a?[2J??\"");
    EXPECT_EQ (quotedText ("a\u0085b"), "\"a?b\"") << "the C1 control characters too";
    EXPECT_EQ (quotedText (std::string_view ("a\0b", 3)), "\"a?b\"");
}

TEST (QuotedText, HidesWhatIsNotUtf8)
{
    EXPECT_EQ (quotedText ("\xff"), "\"?\"");
    EXPECT_EQ (quotedText ("\xc2"), "\"?\"") << "cut short";
    EXPECT_EQ (quotedText ("\xc0\xaf"), "\"??\"") << "overlong";
    EXPECT_EQ (quotedText ("\xe0\x80\xaf"), "\"???\"") << "overlong";
    EXPECT_EQ (quotedText ("\xed\xa0\x80"), "\"???\"") << "surrogate";
    EXPECT_EQ (quotedText ("\xf4\x90\x80\x80"), "\"????\"") << "beyond U+10FFFF";
    EXPECT_EQ (quotedText ("\xc2x"), "\"?x\"");
}

TEST (QuotedText, CutsLongTextBetweenCharacters)
{
    EXPECT_EQ (quotedText (std::string (60, 'x')), '"' + std::string (60, 'x') + '"');
    EXPECT_EQ (quotedText (std::string (61, 'x')), '"' + std::string (60, 'x') + "...\"");
    EXPECT_EQ (quotedText (std::string (59, 'x') + "\u03a9"), '"' + std::string (59, 'x') + "...\"");
    EXPECT_EQ (quotedText (std::string (10'000'000, 'x')).size(), 65U);
}

} // namespace stopwright

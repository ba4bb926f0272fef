// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/CsvCell.h"

#include <gtest/gtest.h>

namespace stopwright
{

// RFC 4180, 2, rules 5 to 7.
TEST (CsvCell, QuotesWhatATableCouldBreakOn)
{
    EXPECT_EQ (csvCell ("Oboe 8"), "Oboe 8");
    EXPECT_EQ (csvCell (""), "");
    EXPECT_EQ (csvCell ("Oboe, soft 8"), "\"Oboe, soft 8\"");
    EXPECT_EQ (csvCell ("Oboe \"soft\" 8"), "\"Oboe \"\"soft\"\" 8\"");
    EXPECT_EQ (csvCell ("a\r\nb"), "\"a\r\nb\"");
}

} // namespace stopwright

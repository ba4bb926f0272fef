// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CsvText.h"

#include <gtest/gtest.h>

namespace stopwright
{

// RFC 4180, 2, rules 5 to 7.
TEST (CsvText, QuotesWhatATableCouldBreakOn)
{
    EXPECT_EQ (csvText ("Oboe 8"), "\"Oboe 8\"");
    EXPECT_EQ (csvText ("Oboe, \"soft\" 8"), "\"Oboe, \"\"soft\"\" 8\"");
    EXPECT_EQ (csvText (""), "\"\"");
    EXPECT_EQ (csvText ("a\nb"), "\"a?b\"");
}

} // namespace stopwright

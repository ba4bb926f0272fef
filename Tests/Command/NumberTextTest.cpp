// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/NumberText.h"
#include "Command/TextTable.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <limits>
#include <sstream>

namespace stopwright
{

TEST (NumberText, CsvHasTwelveDigitsAndAPoint)
{
    EXPECT_EQ (csvNumber (0.5), "0.5");
    EXPECT_EQ (csvNumber (0.0), "0");
    EXPECT_EQ (csvNumber (1.0 / 3.0), "0.333333333333");
    EXPECT_EQ (csvNumber (-std::numeric_limits<double>::infinity()), "-inf");
    for (const double value : { 261.6255653005986, 1.234567890123e-9, -76.54321098765, 2e4 })
        EXPECT_NEAR (std::strtod (csvNumber (value).c_str(), nullptr), value, 1e-11 * std::abs (value));
}

TEST (NumberText, FixedHasItsDecimals)
{
    EXPECT_EQ (fixedNumber (3.14159, 2), "3.14");
    EXPECT_EQ (fixedNumber (-0.5, 3), "-0.500");
    EXPECT_EQ (fixedNumber (-std::numeric_limits<double>::infinity(), 2), "-inf");
    EXPECT_EQ (fixedNumber (std::numeric_limits<double>::max(), 2).size(), 312U);
}

TEST (NumberText, NothingHasNoSign)
{
    EXPECT_EQ (fixedNumber (-0.0004, 3), "0.000");
    EXPECT_EQ (fixedNumber (-0.0006, 3), "-0.001");
    EXPECT_EQ (fixedNumber (-0.0, 0), "0");
    EXPECT_EQ (csvNumber (-0.0), "0");
    EXPECT_EQ (signedNumber (0.0, 3), "0.000");
    EXPECT_EQ (signedNumber (0.0004, 3), "0.000");
    EXPECT_EQ (signedNumber (-0.0004, 3), "0.000");
    EXPECT_EQ (signedNumber (0.0006, 3), "+0.001");
    EXPECT_EQ (signedNumber (-1.5, 1), "-1.5");
    EXPECT_EQ (signedNumber (std::nan (""), 3), "-");
    EXPECT_EQ (signedNumber (-std::numeric_limits<double>::infinity(), 3), "-inf");
}

TEST (TextTable, ColumnsAreFlushRightByCharacters)
{
    TextTable table ({ "value", "n" });
    table.addRow ({ "4.70 k\u03a9", "1" });
    table.addRow ({ "1", "10" });
    std::ostringstream text;
    table.print (text);
    EXPECT_EQ (text.str(), "  value   n\n4.70 k\u03a9   1\n      1  10\n");
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/CsvText.h"

#include "Sheet/CsvRows.h"

#include <gtest/gtest.h>

#include <limits>

namespace stopwright
{
namespace
{

TEST (CsvText, IsReadBackAsItWasWritten)
{
    CsvText csv ({ "name", "level_db" });
    csv.cell ("plain").cell (0.1).end();
    csv.cell ("a, \"b\"\r\nc").cell (-std::numeric_limits<double>::infinity()).end();
    csv.cell ("").cell (1e-9).end();
    const auto rows = test::csvRows (csv.text());
    ASSERT_EQ (rows.size(), 4u);
    EXPECT_EQ (rows[0], (std::vector<std::string> { "name", "level_db" }));
    EXPECT_EQ (rows[1], (std::vector<std::string> { "plain", "0.1" }));
    EXPECT_EQ (rows[2], (std::vector<std::string> { "a, \"b\"\r\nc", "-inf" }));
    EXPECT_EQ (rows[3][1], "1e-09");
}

TEST (CsvText, TheReaderOfTheTestsRefusesWhatIsNone)
{
    EXPECT_THROW (test::csvRows ("a,b\r\nc\r\n"), std::runtime_error);
    EXPECT_THROW (test::csvRows ("a\n"), std::runtime_error);
    EXPECT_THROW (test::csvRows ("\"a\r\n"), std::runtime_error);
}

} // namespace
} // namespace stopwright

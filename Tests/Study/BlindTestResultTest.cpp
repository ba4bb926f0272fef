// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BlindTestResult.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

std::string wordsOf (int right, int rounds)
{
    return BlindTestResult { right, rounds }.words();
}

// 9 of 10: 11 / 1024; 12 of 16: 2517 / 65536; 6 of 10: 386 / 1024 (closed form).
TEST (BlindTestResult, SaysWhatGuessingWouldDo)
{
    EXPECT_EQ (wordsOf (9, 10), "9 of 10 right; guessing would do as well in 1.1 % of such tests");
    EXPECT_EQ (wordsOf (12, 16), "12 of 16 right; guessing would do as well in 3.8 % of such tests");
    EXPECT_EQ (wordsOf (6, 10), "6 of 10 right; guessing would do as well in 38 % of such tests");
    EXPECT_EQ (wordsOf (10, 10), "10 of 10 right; guessing would do as well in 0.098 % of such tests");
    EXPECT_EQ (wordsOf (13, 13), "13 of 13 right; guessing would do as well in 0.012 % of such tests");
}

TEST (BlindTestResult, NeverRoundsToNoneOrAll)
{
    EXPECT_EQ (wordsOf (0, 10), "0 of 10 right; guessing would do as well in 100 % of such tests");
    EXPECT_EQ (wordsOf (1, 16), "1 of 16 right; guessing would do as well in more than 99 % of such tests");
    EXPECT_EQ (wordsOf (40, 40), "40 of 40 right; guessing would do as well in less than 0.0001 % of such tests");
    EXPECT_EQ (wordsOf (0, 0), "No round was answered");
}

TEST (BlindTestResult, MakesALineForTheCard)
{
    const BlindTestResult result { 9, 10 };
    EXPECT_EQ (result.noteLine ("2026-11-27"),
               "Blind test 2026-11-27: 9 of 10 right; guessing would do as well in 1.1 % of such tests.");
    EXPECT_EQ (
        result.noteLine ("2026-11-27", "C1 6n8 / 8n2"),
        "Blind test 2026-11-27: 9 of 10 right; guessing would do as well in 1.1 % of such tests. A / B: C1 6n8 / "
        "8n2.");
}

} // namespace
} // namespace stopwright

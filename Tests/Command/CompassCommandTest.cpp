// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgramRun.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace stopwright
{
namespace
{

constexpr const char* header =
    "key,fundamental_hz,level_dbv,level_dbva,strongest_harmonic,strongest_hz,centroid_hz,h1_db,h2_db,h3_db,h4_db,h5_db,"
    "h6_db,h7_db,h8_db,h9_db,h10_db,h11_db,h12_db,h13_db,h14_db,h15_db,h16_db";

/// The line of a key.
std::string lineOf (const std::string& csv, const std::string& key)
{
    const auto start = csv.find ('\n' + key + ',') + 1;
    return start == 0 ? std::string() : csv.substr (start, csv.find ('\n', start) - start);
}

std::size_t lineCount (const std::string& text)
{
    return static_cast<std::size_t> (std::count (text.begin(), text.end(), '\n'));
}

TEST (CompassCommand, ACardAloneHasSixtyOneKeys)
{
    const auto result = runProgram ({ "compass", preset ("Krummhorn8.json"), "--csv" });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (firstLine (result.out), header);
    EXPECT_EQ (lineCount (result.out), 62U);
    EXPECT_NE (lineOf (result.out, "C2"), "");
    EXPECT_NE (lineOf (result.out, "C7"), "");
}

TEST (CompassCommand, TheHighestGeneratorTakesRanksAway)
{
    const auto all = runProgram ({ "compass", preset ("Krummhorn8.json"), "--csv" });
    const auto upToC9 = runProgram ({ "compass", preset ("Krummhorn8.json"), "--csv", "--highest-generator", "8372" });
    EXPECT_EQ (lineOf (all.out, "C4"), lineOf (upToC9.out, "C4"));
    EXPECT_NE (lineOf (all.out, "C7"), lineOf (upToC9.out, "C7"));
}

TEST (CompassCommand, StopsOfAnInstrument)
{
    const auto result =
        runProgram ({ "compass", preset ("LarkfieldOrgan.json"), "--stop", "Diapason 8, Principal 4", "--csv" });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (firstLine (result.out), header);
    const auto table = runProgram ({ "compass", preset ("LarkfieldOrgan.json") });
    EXPECT_NE (firstLine (table.out).find ("Krummhorn 8"), std::string::npos) << table.out;
}

TEST (CompassCommand, BadInputIsOneSentence)
{
    for (const std::vector<std::string>& arguments :
         { std::vector<std::string> { "compass", preset ("LarkfieldOrgan.json"), "--stop", "Kinura 8" },
           { "compass", preset ("LarkfieldOrgan.json"), "--stop", "Diapason 8, Oboe 8" },
           { "compass", preset ("LarkfieldOrgan.json"), "--highest-generator", "8000" },
           { "compass", preset ("Oboe8.json"), "--stop", "Oboe 8" },
           { "compass", preset ("Missing.json") } })
    {
        const auto result = runProgram (arguments);
        EXPECT_EQ (result.status, 1) << result.out;
        EXPECT_EQ (result.errorLines(), 1) << result.err;
        EXPECT_EQ (result.out, "");
    }
    EXPECT_EQ (runProgram ({ "compass" }).status, 2);
    EXPECT_EQ (runProgram ({ "compass", preset ("Oboe8.json"), "--highest-generator", "loud" }).status, 2);
}

} // namespace
} // namespace stopwright

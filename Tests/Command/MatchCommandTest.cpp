// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CsvTable.h"
#include "Command/ProgramRun.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace stopwright
{

namespace
{

constexpr const char* compassHeader =
    "key,stop_dbv,reference_dbv,step_db,stop_dbva,reference_dbva,step_dba,key_ohm,why_none";

ProgramResult match (std::vector<std::string> more)
{
    std::vector<std::string> all { "match", preset ("LarkfieldOrgan.json") };
    all.insert (all.end(), more.begin(), more.end());
    return runProgram (all);
}

/// Cells of a line of CSV without quoted commas.
std::vector<std::string> cellsOf (const std::string& text, std::size_t line)
{
    std::size_t start = 0;
    for (std::size_t skipped = 0; skipped < line; ++skipped)
        start = text.find ('\n', start) + 1;
    std::vector<std::string> cells { "" };
    for (; start < text.size() && text[start] != '\n'; ++start)
        if (text[start] == ',')
            cells.emplace_back();
        else
            cells.back() += text[start];
    return cells;
}

/// Nine squares through 47 k on a wire of 100 k, all drawn.
std::string organOfNine (const ScratchFolder& scratch)
{
    scratch.write ("bare.json", R"({ "stopwright": 1, "kind": "card", "name": "Bare", "taps": [
      { "name": "W", "wave": "square", "footage": "8", "vpp": 1.0, "sourceOhms": 0, "node": "a" } ],
      "parts": [ { "name": "R1", "kind": "resistor", "nodes": ["a", "0"], "value": "100k" } ], "output": "a" })");
    std::string stops;
    for (int stop = 1; stop <= 9; ++stop)
        stops +=
            std::string (stop == 1 ? "" : ",") + R"({ "tablet": "S)" + std::to_string (stop)
            + R"(", "division": "Manual", "card": "bare.json", "bus": "Wire", "mixingOhms": "47k", "drawn": true })";
    return scratch.write ("nine.json", R"({ "stopwright": 1, "kind": "instrument", "name": "Nine",
      "tuning": { "kind": "equalTemperament", "referenceHz": 440 }, "highestGenerator": "C9",
      "divisions": [ { "name": "Manual", "lowestKey": "C2", "highestKey": "C7" } ],
      "mixingBuses": [ { "name": "Wire", "kind": "passive", "loadOhms": "100k" } ],
      "preamps": [ { "name": "Plain", "bus": "Wire", "outlet": "Main", "stages": [] } ],
      "outlets": [ { "name": "Main", "kind": "main" } ], "stops": [)"
                                           + stops + "] }");
}

/// A stop that falls by half each octave beside one that does not, so far apart that the low keys want more ohms than any
/// resistor that is sold.
std::string organOfFalling (const ScratchFolder& scratch)
{
    scratch.write ("level.json", R"({ "stopwright": 1, "kind": "card", "name": "Level", "taps": [
      { "name": "W", "wave": "triangle", "footage": "8", "vpp": 1, "sourceOhms": 0, "node": "a" } ],
      "parts": [ { "name": "R1", "kind": "resistor", "nodes": ["a", "0"], "value": "100k" } ], "output": "a" })");
    scratch.write ("falling.json", R"({ "stopwright": 1, "kind": "card", "name": "Falling", "taps": [
      { "name": "W", "wave": "triangle", "footage": "8", "vpp": 100, "sourceOhms": 0, "node": "a" } ],
      "parts": [ { "name": "R1", "kind": "resistor", "nodes": ["a", "t"], "value": "470" },
                 { "name": "C1", "kind": "capacitor", "nodes": ["t", "0"], "value": "10u" } ], "output": "t" })");
    return scratch.write ("falling-organ.json", R"({ "stopwright": 1, "kind": "instrument", "name": "Falling",
      "tuning": { "kind": "equalTemperament", "referenceHz": 440 },
      "divisions": [ { "name": "Manual", "lowestKey": "C2", "highestKey": "C7" } ],
      "mixingBuses": [ { "name": "Earth", "kind": "virtualEarth", "feedbackOhms": "100k" } ],
      "preamps": [ { "name": "Plain", "bus": "Earth", "outlet": "Main", "stages": [] } ],
      "outlets": [ { "name": "Main", "kind": "main" } ],
      "stops": [ { "tablet": "Falling", "division": "Manual", "card": "falling.json", "bus": "Earth", "mixingOhms": "470k" },
                 { "tablet": "Level", "division": "Manual", "card": "level.json", "bus": "Earth", "mixingOhms": "470k" } ]
      })");
}

} // namespace

TEST (MatchCommand, PrintsTheCompass)
{
    const auto result = match ({ "--stop", "Krummhorn 8", "--to", "Stopped flute 8", "--csv" });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (result.err, "");
    EXPECT_EQ (firstLine (result.out), compassHeader);
    EXPECT_EQ (std::count (result.out.begin(), result.out.end(), '\n'), 62);
    const auto lowest = cellsOf (result.out, 1);
    EXPECT_EQ (lowest.at (0), "C2");
    EXPECT_NEAR (std::stod (lowest.at (1)) - std::stod (lowest.at (2)), std::stod (lowest.at (3)), 1e-9);
    EXPECT_NEAR (std::stod (lowest.at (4)) - std::stod (lowest.at (5)), std::stod (lowest.at (6)), 1e-9);
}

// (1 / R) / (8 / 47 k + 1 / 100 k + 1 / R), 5.4 dB below nine of 47 k: closed form.
TEST (MatchCommand, SolvesAPassiveBus)
{
    const ScratchFolder scratch;
    const auto organ = organOfNine (scratch);
    const std::vector<std::string> wish { "match",    organ,     "--stop",    "S9",    "--to", "S1",
                                          "--offset", "-5.4",    "--against", "today", "--at", "C4",
                                          "--have",   "82k,91k", "--csv",     "--list" };
    auto arguments = wish;
    arguments.emplace_back ("resistors");
    const auto resistors = runProgram (arguments);
    EXPECT_EQ (resistors.status, 0) << resistors.err;
    EXPECT_EQ (firstLine (resistors.out), "choice,ohm,first_ohm,second_ohm,step_db,error_db,rms_off_wish_db");
    EXPECT_NEAR (std::stod (cellsOf (resistors.out, 1).at (1)), 92.3e3, 50.0);
    const auto rounded = cellsOf (resistors.out, 2);
    EXPECT_EQ (rounded.at (0), "E24");
    EXPECT_EQ (rounded.at (1), "91000");
    EXPECT_NEAR (std::stod (rounded.at (4)), -5.284, 0.0005);
    EXPECT_NEAR (std::stod (rounded.at (5)), 0.116, 0.0005);
    EXPECT_EQ (cellsOf (resistors.out, 3).at (1), "91000");

    arguments.back() = "others";
    const auto others = runProgram (arguments);
    EXPECT_EQ (firstLine (others.out), "stop,re_now_db,re_now_largest_db,re_without_db,re_without_largest_db");
    EXPECT_EQ (cellsOf (others.out, 1).at (0), "S1");
    EXPECT_NEAR (std::stod (cellsOf (others.out, 1).at (3)), -0.514, 0.0005);

    arguments.back() = "octaves";
    const auto octaves = runProgram (arguments);
    EXPECT_EQ (firstLine (octaves.out), "lowest_key,highest_key,ohm,why_none");
    EXPECT_EQ (cellsOf (octaves.out, 1).at (1), "B2");
    EXPECT_NEAR (std::stod (cellsOf (octaves.out, 1).at (2)), 92.3e3, 50.0);
}

TEST (MatchCommand, TablesSayBothReferences)
{
    const ScratchFolder scratch;
    const auto result =
        runProgram ({ "match", organOfNine (scratch), "--stop", "S9", "--to", "S1", "--offset", "-5.4", "--at", "C4" });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_NE (result.out.find ("87.52 k"), std::string::npos) << result.out; // 47 k times 10^(5.4 / 20)
    EXPECT_NE (result.out.find ("as it is today, which the new resistor shifts: 92.30 k"), std::string::npos)
        << result.out;
}

TEST (MatchCommand, AnUnreachableWishIsAnErrorInEveryForm)
{
    const std::vector<std::string> wish { "--stop", "Krummhorn 8", "--to", "Stopped flute 8", "--offset", "90" };
    const auto table = match (wish);
    EXPECT_EQ (table.status, 1);
    EXPECT_EQ (table.out, "");
    EXPECT_NE (table.err.find ("No mixing resistor that is sold brings \"Krummhorn 8\" to +90.00 dB"),
               std::string::npos)
        << table.err;
    for (const std::string list : { "compass", "resistors", "octaves", "others" })
    {
        auto arguments = wish;
        arguments.insert (arguments.end(), { "--csv", "--list", list });
        const auto csv = match (arguments);
        EXPECT_EQ (csv.status, 1) << list;
        EXPECT_EQ (csv.out, "") << list;
        EXPECT_EQ (csv.err, table.err) << list;
    }
}

TEST (MatchCommand, OffersOnlyWhatIsSoldAndSaysWhyThereIsNone)
{
    const ScratchFolder scratch;
    const std::vector<std::string> wish { "match", organOfFalling (scratch), "--stop", "Falling", "--to", "Level" };
    const auto table = runProgram (wish);
    EXPECT_EQ (table.status, 0) << table.err;
    for (const std::string words : { "10.0 Ω to 10.0 MΩ (common practice, no source)", "none: too loud",
                                     "even the largest leaves the stop above the wish" })
        EXPECT_NE (table.out.find (words), std::string::npos) << words << '\n' << table.out;
    auto arguments = wish;
    arguments.emplace_back ("--csv");
    const auto compass = csvTable (runProgram (arguments).out);
    int misses = 0;
    for (const auto& row : compass)
    {
        EXPECT_NE (row.at ("key_ohm").empty(), row.at ("why_none").empty()) << row.at ("key");
        if (row.at ("key_ohm").empty())
            misses += row.at ("why_none") == "too loud" ? 1 : 0;
        else
            EXPECT_LE (std::stod (row.at ("key_ohm")), 10e6) << row.at ("key");
    }
    EXPECT_GT (misses, 0);
    EXPECT_LT (misses, 61);
}

TEST (MatchCommand, PrintsNothingBeforeItFails)
{
    for (const auto& more : std::vector<std::vector<std::string>> { { "--at", "C9" }, { "--keys", "C4 C9" } })
    {
        std::vector<std::string> arguments { "--stop", "Krummhorn 8", "--to", "Oboe 8" };
        arguments.insert (arguments.end(), more.begin(), more.end());
        const auto result = match (arguments);
        EXPECT_EQ (result.status, 1);
        EXPECT_EQ (result.out, "");
        EXPECT_NE (result.err.find ("C9 is not on the keyboards"), std::string::npos) << result.err;
    }
}

TEST (MatchCommand, NothingHasNoSign)
{
    const auto same = match ({ "--stop", "Krummhorn 8", "--to", "Krummhorn 8", "--at", "C4" });
    EXPECT_EQ (same.out.find ("-0.000"), std::string::npos) << same.out;
    EXPECT_EQ (same.out.find ("+0.000"), std::string::npos) << same.out;
}

TEST (MatchCommand, SaysWhatIsWrong)
{
    struct Case
    {
        std::vector<std::string> arguments;
        std::string words;
    };

    for (const Case& wrong :
         { Case { { "--stop", "Kinura 8", "--to", "Oboe 8" }, "There is no stop \"Kinura 8\"" },
           Case { { "--stop", "Krummhorn 8", "--to", "Oboe 8", "--offset", "90", "--csv", "--list", "resistors" },
                  "No mixing resistor that is sold brings \"Krummhorn 8\"" },
           Case { { "--stop", "Krummhorn 8", "--to", "Oboe 8", "--at", "C8" }, "C8 is not on the keyboards" },
           Case { { "--stop", "Krummhorn 8", "--to", "Oboe 8", "--drawn", "Nothing 8" }, "Nothing 8" } })
    {
        const auto result = match (wrong.arguments);
        EXPECT_EQ (result.status, 1) << wrong.words;
        EXPECT_EQ (result.errorLines(), 1) << result.err;
        EXPECT_NE (result.err.find (wrong.words), std::string::npos) << result.err;
    }
}

TEST (MatchCommand, WrongUsage)
{
    const std::vector<std::vector<std::string>> wrong {
        { "--stop", "Oboe 8" },
        { "--stop", "Oboe 8", "--to", "String 8", "--offset", "loud" },
        { "--stop", "Oboe 8", "--to", "String 8", "--measure", "B" },
        { "--stop", "Oboe 8", "--to", "String 8", "--at", "C4", "--keys", "C4" },
        { "--stop", "Oboe 8", "--to", "String 8", "--have", "0" },
        { "--stop", "Oboe 8", "--to", "String 8", "--have", " , " },
        { "--stop", "Oboe 8", "--to", "String 8", "--series", "E25" },
        { "--stop", "Oboe 8", "--to", "String 8", "--list", "others" },
    };
    for (const auto& arguments : wrong)
    {
        const auto result = match (arguments);
        EXPECT_EQ (result.status, 2) << ::testing::PrintToString (arguments);
        EXPECT_EQ (result.out, "");
        EXPECT_EQ (result.errorLines(), 1) << result.err;
    }
}

} // namespace stopwright

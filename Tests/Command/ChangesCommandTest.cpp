// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CsvTable.h"
#include "Command/ProgramRun.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

constexpr const char* card = R"({ "stopwright": 1, "kind": "card", "name": "Moved", "taps": [
  { "name": "W \"1\"", "wave": "square", "vpp": 1, "node": "a", "asFound": { "wave": "staircase", "ranks": 4, "vpp": 1 } } ],
  "parts": [ { "name": "R1", "kind": "resistor", "nodes": ["a", "0"], "value": "10k" } ], "output": "a" })";

constexpr const char* organ = R"({ "stopwright": 1, "kind": "instrument", "name": "Small",
  "tuning": { "kind": "equalTemperament" }, "divisions": [ { "name": "Manual", "lowestKey": "C2", "highestKey": "C7" } ],
  "keyedBuses": [ { "name": "Squares", "wave": "square", "vpp": 1 }, { "name": "Stairs", "wave": "staircase", "vpp": 1 } ],
  "mixingBuses": [ { "name": "Mix", "kind": "passive" }, { "name": "Chorus", "kind": "passive" } ],
  "stops": [ { "tablet": "Reed 8", "division": "Manual", "card": "moved.json", "bus": "Chorus", "mixingOhms": "82k",
               "asFound": { "bus": "Mix", "mixingOhms": "100k", "date": "2026-11-27", "why": "Too loud\nwith, the \"flute\"." } },
             { "tablet": "Other", "division": "Manual", "bus": "Mix" } ] })";

} // namespace

TEST (ChangesCommand, SaysThatAnOrganIsAsFound)
{
    const auto file = preset ("LarkfieldOrgan.json");
    const auto result = runProgram ({ "changes", file });
    EXPECT_EQ (result.status, 0);
    EXPECT_EQ (result.err, "");
    EXPECT_EQ (result.out, file + ": \"Larkfield music school\", as found: no alteration is noted\n");
    EXPECT_EQ (runProgram ({ "changes", file, "--csv" }).out,
               "place,what,as_found,as_altered,date,why,way_back,card\n");
}

TEST (ChangesCommand, ListsTabletsThenTaps)
{
    const ScratchFolder scratch;
    scratch.write ("moved.json", card);
    const auto file = scratch.write ("organ.json", organ);
    const auto result = runProgram ({ "changes", file });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (
        result.out,
        file
            + ": \"Small\", 3 alterations\n"
              "  Reed 8: mixing bus: Mix -> Chorus\n"
              "      noted    2026-11-27: Too loud with, the \"flute\".\n"
              "      way back Take the mixing resistor of \"Reed 8\" off mixing bus Chorus and put it back on mixing "
              "bus Mix.\n"
              "  Reed 8: mixing resistor: 100k -> 82k\n"
              "      noted    2026-11-27: Too loud with, the \"flute\".\n"
              "      way back Put 100k back in place of 82k as the mixing resistor of \"Reed 8\".\n"
              "  Reed 8, tap W \"1\": keyed wave: Stairs (staircase of 4 ranks, 8 ft, first 1.00 V p-p behind 0 \xCE\xA9) "
              "-> Squares (square, 8 ft, 1.00 V p-p behind 0 \xCE\xA9)\n"
              "      way back Take tap \"W \"1\"\" of \"Reed 8\" off keyed bus Squares and put it back on keyed bus "
              "Stairs.\n");
}

TEST (ChangesCommand, WritesCsv)
{
    const ScratchFolder scratch;
    scratch.write ("moved.json", card);
    const auto table = csvTable (runProgram ({ "changes", scratch.write ("organ.json", organ), "--csv" }).out);
    ASSERT_EQ (table.size(), 3U);
    EXPECT_EQ (table[0].at ("place"), "Reed 8");
    EXPECT_EQ (table[0].at ("what"), "mixing bus");
    EXPECT_EQ (table[0].at ("as_found"), "Mix");
    EXPECT_EQ (table[0].at ("as_altered"), "Chorus");
    EXPECT_EQ (table[0].at ("date"), "2026-11-27");
    EXPECT_EQ (table[0].at ("why"), "Too loud with, the \"flute\".");
    EXPECT_EQ (table[0].at ("card"), "");
    EXPECT_EQ (table[2].at ("place"), "Reed 8, tap W \"1\"");
    EXPECT_EQ (table[2].at ("card"), "moved.json");
    EXPECT_EQ (table[2].at ("date"), "");
}

TEST (ChangesCommand, TakesACardAlone)
{
    const ScratchFolder scratch;
    const auto result = runProgram ({ "changes", scratch.write ("moved.json", card) });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_NE (result.out.find ("\"Moved\", 1 alteration\n"), std::string::npos) << result.out;
    EXPECT_NE (result.out.find ("  Moved, tap W \"1\": keyed wave: staircase of 4 ranks"), std::string::npos)
        << result.out;
}

TEST (ChangesCommand, SaysWhichCardItCouldNotRead)
{
    const ScratchFolder scratch;
    const auto result = runProgram ({ "changes", scratch.write ("organ.json", organ) });
    EXPECT_EQ (result.status, 1);
    EXPECT_NE (result.out.find ("2 alterations"), std::string::npos) << result.out;
    EXPECT_EQ (result.errorLines(), 1);
    EXPECT_NE (result.err.find ("(the card of tablet \"Reed 8\")"), std::string::npos) << result.err;
}

TEST (ChangesCommand, RefusesAMask)
{
    const auto result = runProgram ({ "changes", preset ("Masks/OboeFormants.json") });
    EXPECT_EQ (result.status, 1);
    EXPECT_EQ (result.errorLines(), 1);
}

} // namespace stopwright

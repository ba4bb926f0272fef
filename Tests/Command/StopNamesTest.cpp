// SPDX-License-Identifier: GPL-3.0-or-later
//
// How the commands answer names of stops: all alike.
#include "Command/ProgramRun.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace stopwright
{

namespace
{

using Arguments = std::vector<std::string>;

/// Every way to name a stop, with this instrument and this name.
std::vector<Arguments> namings (const std::string& organ, const std::string& name)
{
    const auto mask = preset ("Masks/Diapason8.json");
    return { { "compass", organ, "--stop", name },
             { "match", organ, "--stop", name, "--to", name },
             { "match", organ, "--stop", "Heard 8", "--to", name },
             { "match", organ, "--stop", "Heard 8", "--to", "Heard 8", "--drawn", name },
             { "effect", organ, "--stop", name },
             { "effect", organ, "--stop", "Heard 8", "--drawn", name },
             { "together", organ, "--stops", name },
             { "mask", organ, "--stop", name, "--mask", mask },
             { "expect", organ, "--stop", name, "--key", "C4" },
             { "source", organ, "--stop", name, "--mask", mask } };
}

/// Stops of which one is heard, one is on no mixing bus and one on a bus without a preamp.
std::string organOf (const ScratchFolder& scratch, const std::string& stops)
{
    scratch.write ("bare.json", R"({ "stopwright": 1, "kind": "card", "name": "Bare", "taps": [
      { "name": "W", "wave": "square", "footage": "8", "vpp": 1.0, "node": "a" } ],
      "parts": [ { "name": "R1", "kind": "resistor", "nodes": ["a", "0"], "value": "100k" } ], "output": "a" })");
    return scratch.write ("organ.json", R"({ "stopwright": 1, "kind": "instrument", "name": "Small",
      "tuning": { "kind": "equalTemperament" },
      "divisions": [ { "name": "Manual", "lowestKey": "C2", "highestKey": "C7" } ],
      "mixingBuses": [ { "name": "Wire", "kind": "passive" }, { "name": "Loose", "kind": "passive" } ],
      "preamps": [ { "name": "Plain", "bus": "Wire", "outlet": "Main", "stages": [] } ],
      "outlets": [ { "name": "Main", "kind": "main" } ],
      "couplers": [ { "tablet": "Octave up", "from": "Manual", "to": "Manual", "octaves": 1 } ],
      "stops": [)" + stops + "] }");
}

std::string wholeOrgan (const ScratchFolder& scratch)
{
    return organOf (scratch, R"(
      { "tablet": "Heard 8", "division": "Manual", "card": "bare.json", "bus": "Wire" },
      { "tablet": "Free 8", "division": "Manual", "card": "bare.json" },
      { "tablet": "Loose 8", "division": "Manual", "card": "bare.json", "bus": "Loose" },
      { "tablet": "Blank 8", "division": "Manual" } )");
}

void expectFault (const Arguments& arguments, int status, const std::vector<std::string>& words)
{
    const auto result = runProgram (arguments);
    const auto line = ::testing::PrintToString (arguments);
    EXPECT_EQ (result.status, status) << line;
    EXPECT_EQ (result.out, "") << line;
    EXPECT_EQ (result.errorLines(), 1) << line << result.err;
    for (const auto& word : words)
        EXPECT_NE (result.err.find (word), std::string::npos) << "no " << word << " in " << line << result.err;
}

} // namespace

TEST (StopNames, AMisspeltOneIsSuggestedAndAllAreNamed)
{
    const ScratchFolder scratch;
    const auto organ = wholeOrgan (scratch);
    for (const auto& arguments : namings (organ, "Haerd 8"))
        expectFault (arguments, 1,
                     { "There is no stop \"Haerd 8\" in the instrument; did you mean \"Heard 8\"?",
                       "It has \"Heard 8\", \"Free 8\" and \"Loose 8\"." });
    expectFault ({ "headroom", organ, "--stops", "Haerd 8" }, 1, { "did you mean \"Heard 8\"?", "It has \"Heard 8\"" });
}

TEST (StopNames, CouplersAndBlankTabletsAreKnown)
{
    const ScratchFolder scratch;
    const auto organ = wholeOrgan (scratch);
    for (const auto& arguments : namings (organ, "Octave up"))
        expectFault (arguments, 1, { "\"Octave up\" is a coupler", "name a stop", "\"Heard 8\"" });
    for (const auto& arguments : namings (organ, "Blank 8"))
        expectFault (arguments, 1, { "\"Blank 8\" is blank", "give it a card" });
}

TEST (StopNames, AnEmptyOneIsWrongUsageEverywhere)
{
    const ScratchFolder scratch;
    const auto organ = wholeOrgan (scratch);
    for (const std::string name : { "", "  " })
        for (const auto& arguments : namings (organ, name))
            expectFault (arguments, 2, { "the name is empty; name " });
}

TEST (StopNames, AnInstrumentWithoutStopsSaysSo)
{
    const ScratchFolder scratch;
    const auto organ = organOf (scratch, "");
    for (const auto& arguments : namings (organ, "Heard 8"))
        expectFault (arguments, 1, { "it has no stops yet" });
    expectFault ({ "compass", organ }, 1, { "has no stops yet; give a tablet of it a card" });
}

TEST (StopNames, WhatCannotBeHeardIsRefusedWithTheWayOut)
{
    const ScratchFolder scratch;
    const auto organ = wholeOrgan (scratch);
    for (const auto& [name, words] :
         { std::pair { std::string ("Free 8"), Arguments { "is on no mixing bus", "give it a bus" } },
           { std::string ("Loose 8"), Arguments { "feeds no preamp", "add a preamp that names it" } } })
        for (const auto& arguments : namings (organ, name))
            if (arguments.front() != "expect" && arguments.front() != "source") // of the card itself
                expectFault (arguments, 1, words);
}

TEST (StopNames, WithoutMixingBusesNothingJoinsTheStops)
{
    const ScratchFolder scratch;
    wholeOrgan (scratch);
    const auto organ = scratch.write ("bare-organ.json", R"({ "stopwright": 1, "kind": "instrument", "name": "Bare",
      "tuning": { "kind": "equalTemperament" },
      "divisions": [ { "name": "Manual", "lowestKey": "C2", "highestKey": "C7" } ],
      "stops": [ { "tablet": "Heard 8", "division": "Manual", "card": "bare.json" } ] })");
    const auto effect = runProgram ({ "effect", organ, "--stop", "Heard 8" });
    EXPECT_EQ (effect.status, 0) << effect.err;
    EXPECT_EQ (effect.out.find ("through"), std::string::npos) << effect.out;
    EXPECT_NE (effect.out.find ("has no mixing buses"), std::string::npos) << effect.out;
    expectFault ({ "match", organ, "--stop", "Heard 8", "--to", "Heard 8", "--csv" }, 1,
                 { "on no mixing bus", "give it a bus" });
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgramRun.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

constexpr const char* goodCard = R"({ "stopwright": 1, "kind": "card", "name": "Small", "taps": [
  { "name": "W1", "wave": "square", "footage": "8", "vpp": 1.0, "sourceOhms": "1k", "node": "in" } ],
  "parts": [ { "name": "R1", "kind": "resistor", "nodes": ["in", "out"], "value": "47k" },
             { "name": "C1", "kind": "capacitor", "nodes": ["out", "0"], "value": "10n" } ], "output": "out" })";

std::string replaced (std::string text, const std::string& from, const std::string& to)
{
    return text.replace (text.find (from), from.size(), to);
}

void expectOneRefusal (const std::string& file, const std::string& word)
{
    const auto result = runProgram ({ "check", file });
    EXPECT_EQ (result.status, 1) << file;
    EXPECT_EQ (result.out, "") << file;
    EXPECT_EQ (result.errorLines(), 1) << result.err;
    EXPECT_NE (result.err.find (word), std::string::npos) << "no " << word << " in: " << result.err;
}

} // namespace

TEST (CheckCommand, EveryPresetIsSound)
{
    int cards = 0;
    for (const auto& entry : std::filesystem::directory_iterator (preset ("")))
    {
        if (entry.path().extension() != ".json")
            continue;
        const auto result = runProgram ({ "check", entry.path().string() });
        EXPECT_EQ (result.status, 0) << entry.path() << '\n' << result.err;
        EXPECT_EQ (result.out.find ("warning"), std::string::npos) << result.out;
        ++cards;
    }
    EXPECT_GE (cards, 16);
}

TEST (CheckCommand, SaysWhatACardIs)
{
    const ScratchFolder scratch;
    const auto result = runProgram ({ "check", scratch.write ("a.json", goodCard) });
    EXPECT_EQ (result.status, 0);
    for (const std::string words : { "stop card \"Small\"", "W1 at node in: square, 8 ft", "1 resistor, 1 capacitor",
                                     "nodes   2", "states  1", "node out" })
        EXPECT_NE (result.out.find (words), std::string::npos) << "no " << words << " in: " << result.out;
}

TEST (CheckCommand, SaysWhereACardWithDevicesRests)
{
    const auto result = runProgram ({ "check", STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/card-devices.json" });
    EXPECT_EQ (result.status, 0) << result.err;
    for (const std::string words :
         { "2 diodes, 1 npn transistor, 1 pnp transistor, 2 supplies", "rest    node +: 15.0 V",
           "rest    Q1 active: ", "into its base", "rest    D1 blocking: ", "rest    V1 supplying: " })
        EXPECT_NE (result.out.find (words), std::string::npos) << "no " << words << " in: " << result.out;
}

TEST (CheckCommand, SaysWhatAnInstrumentIs)
{
    const auto result = runProgram ({ "check", preset ("LarkfieldOrgan.json") });
    EXPECT_EQ (result.status, 0) << result.err;
    // The tuning's departures from equal temperament: 2.00024 MHz over 478 .. 253, closed form.
    for (const std::string words :
         { "instrument \"Larkfield music school\"", "61 keys, C2 to C7, MIDI channel 1",
           "30 keys, C2 to F4, MIDI channel 3", "-1.19 to +1.19 cents",
           "Krummhorn8.json, proposed, drawn, 100 k\u03a9 to Upper reeds, grounded when retired",
           "Square 2, 500 \u00b5s apart", "Upper reeds: passive, 10.0 k\u03a9 and 1.00 nF to common",
           "Upper flutes: virtual earth, feedback 100 k\u03a9", "Upper reed preamp: from Upper reeds to Main",
           "Gain: amplifier, 1.00 \u00b5F into 47.0 k\u03a9 (3.39 Hz), gain 30 (29.5 dB)",
           "drives 47.0 k\u03a9 and sinks to -5.77 V", "Main: as it comes", "Rotary: rotary speaker",
           "Upper octave: keys of Upper manual play Upper manual an octave higher" })
        EXPECT_NE (result.out.find (words), std::string::npos) << "no " << words << " in: " << result.out;
}

TEST (CheckCommand, RefusesWithOneSentence)
{
    const ScratchFolder scratch;
    const std::string good = goodCard;
    expectOneRefusal ((scratch / "absent.json").string(), "absent.json");
    expectOneRefusal (scratch.path().string(), "directory");
    expectOneRefusal (scratch.write ("empty.json", ""), "empty.json");
    expectOneRefusal (scratch.write ("binary.json", std::string ("\0\xff\xfe\x7f", 4)), "binary.json");
    expectOneRefusal (scratch.write ("version.json", replaced (good, "\"stopwright\": 1", "\"stopwright\": 99")), "99");
    expectOneRefusal (scratch.write ("value.json", replaced (good, "\"47k\"", "\"47q\"")), "47q");
    expectOneRefusal (scratch.write ("node.json", replaced (good, "\"output\": \"out\"", "\"output\": \"elsewhere\"")),
                      "elsewhere");
    expectOneRefusal (scratch.write ("deep.json", std::string (100000, '[')), "deep.json");
    expectOneRefusal (scratch.write ("large.json", std::string ((4U << 20U) + 1, ' ')), "4 MiB");
}

TEST (CheckCommand, ListsAllFaultsOfANetwork)
{
    const ScratchFolder scratch;
    auto card = replaced (goodCard, R"(["in", "out"])", R"(["in", "in"])");
    card = replaced (card, R"(["out", "0"])", R"(["out", "out"])");
    const auto result = runProgram ({ "check", scratch.write ("a.json", card) });
    EXPECT_EQ (result.status, 1);
    EXPECT_GE (result.errorLines(), 2) << result.err;
    for (const std::string part : { "R1", "C1" })
        EXPECT_NE (result.err.find (part), std::string::npos) << "no " << part << " in: " << result.err;
}

TEST (CheckCommand, WarnsOfUnknownFieldsAndIsStillContent)
{
    const ScratchFolder scratch;
    const auto result =
        runProgram ({ "check", scratch.write ("a.json", replaced (goodCard, "\"value\": \"47k\"",
                                                                  "\"value\": \"47k\", \"colour\": \"blue\"")) });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_NE (result.out.find ("warning"), std::string::npos);
    EXPECT_NE (result.out.find ("colour"), std::string::npos);
}

TEST (CheckCommand, LooksIntoTheCardsOfAnInstrument)
{
    const ScratchFolder scratch;
    const std::string instrument =
        R"({ "stopwright": 1, "kind": "instrument", "name": "Two", "tuning": { "kind": "equalTemperament" },
      "divisions": [ { "name": "Manual", "lowestKey": "C2", "highestKey": "C7" } ],
      "keyedBuses": [ { "name": "Square 4", "footage": "4", "wave": "square", "vpp": 1, "sourceOhms": "1k" } ],
      "stops": [ { "tablet": "A", "division": "Manual", "card": "a.json" } ] })";
    const auto file = scratch.write ("instrument.json", instrument);
    expectOneRefusal (file, "tablet A");

    scratch.write ("a.json", goodCard);
    const auto offBus = runProgram ({ "check", file });
    EXPECT_EQ (offBus.status, 0) << offBus.err;
    EXPECT_NE (offBus.out.find ("no keyed bus"), std::string::npos)
        << "an 8 ft tap, and only a 4 ft bus: " << offBus.out;

    scratch.write ("a.json", replaced (goodCard, "\"footage\": \"8\"", "\"footage\": \"4\""));
    EXPECT_EQ (runProgram ({ "check", file }).out.find ("warning"), std::string::npos);

    scratch.write ("a.json", replaced (goodCard, "\"output\": \"out\"", "\"output\": \"elsewhere\""));
    expectOneRefusal (file, "elsewhere");
}

TEST (CheckCommand, LooksIntoTheCircuitStagesOfAnInstrument)
{
    const ScratchFolder scratch;
    const auto instrument = [] (const std::string& card)
    {
        return R"({ "stopwright": 1, "kind": "instrument", "tuning": { "kind": "equalTemperament" },
      "divisions": [ { "name": "Manual", "lowestKey": "C2", "highestKey": "C7" } ],
      "mixingBuses": [ { "name": "Mix", "kind": "passive" } ], "outlets": [ { "name": "Main", "kind": "main" } ],
      "preamps": [ { "name": "P", "bus": "Mix", "outlet": "Main",
                     "stages": [ { "name": "Tone", "kind": "circuit", "card": ")"
               + card + R"(" } ] } ] })";
    };
    expectOneRefusal (scratch.write ("a.json", instrument ("tone.json")), "stage Tone");
    expectOneRefusal (scratch.write ("b.json", instrument ("../tone.json")), "outside the folder");

    scratch.write ("tone.json", goodCard);
    const auto result = runProgram ({ "check", scratch.write ("a.json", instrument ("tone.json")) });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_NE (result.out.find ("Tone: circuit tone.json"), std::string::npos) << result.out;
    EXPECT_NE (result.out.find ("warning: " + (scratch / "a.json").string() + ": mixing bus Mix has no stops"),
               std::string::npos)
        << result.out;

    scratch.write ("tone.json", replaced (goodCard, "\"output\": \"out\"", "\"output\": \"elsewhere\""));
    expectOneRefusal (scratch.write ("a.json", instrument ("tone.json")), "elsewhere");
}

} // namespace stopwright

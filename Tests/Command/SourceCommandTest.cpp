// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CsvTable.h"
#include "Command/ProgramRun.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr const char* header = "key,entry,harmonic,frequency_hz,wanted_db,source_db,state,cause,bus,bus_harmonic,"
                               "bus_db,ratio_db,ratio,resistor_ratio";

constexpr const char* hollowCard = R"({ "stopwright": 1, "kind": "card", "name": "Hollow", "taps": [
  { "name": "S, 8", "wave": "square", "footage": "8", "vpp": 1, "node": "a" } ], "parts": [], "output": "a" })";

/// An organ of one square stop with squares at 8 and 4 ft and a staircase; C9 is the highest generator.
constexpr const char* smallOrgan = R"({ "stopwright": 1, "kind": "instrument", "name": "Small",
  "tuning": { "kind": "equalTemperament" }, "divisions": [ { "name": "Manual", "lowestKey": "C2", "highestKey": "C7" } ],
  "keyedBuses": [ { "name": "S, 8", "wave": "square", "footage": "8", "vpp": 1 },
                  { "name": "S \"4\"", "wave": "square", "footage": "4", "vpp": 1 },
                  { "name": "Stairs", "wave": "staircase", "footage": "8", "vpp": 1 } ],
  "mixingBuses": [ { "name": "Mix", "kind": "passive" } ],
  "stops": [ { "tablet": "Hollow 8", "division": "Manual", "card": "hollow.json", "bus": "Mix" },
             { "tablet": "Blank", "division": "Manual" } ] })";

constexpr const char* octaveMask =
    R"({ "stopwright": 1, "kind": "mask", "name": "Octave", "certainty": "common practice",
  "levelsRe": "first", "harmonics": [ { "harmonic": 1, "levelDb": 0, "toleranceDb": 6 },
  { "harmonic": 2, "levelDb": -30, "toleranceDb": 6 }, { "harmonic": 8, "levelDb": -20, "toleranceDb": 6 },
  { "harmonic": 11, "levelDb": -20, "toleranceDb": 6 } ] })";

class SourceCommand : public testing::Test
{
protected:
    SourceCommand()
    {
        scratch_.write ("hollow.json", hollowCard);
        organ_ = scratch_.write ("organ.json", smallOrgan);
        mask_ = scratch_.write ("mask.json", octaveMask);
    }

    ProgramResult run (const std::vector<std::string>& more) const
    {
        std::vector<std::string> all { "source", organ_, "--stop", "Hollow 8", "--mask", mask_ };
        all.insert (all.end(), more.begin(), more.end());
        return runProgram (all);
    }

    ScratchFolder scratch_;
    std::string organ_;
    std::string mask_;
};

void expectWords (const std::string& text, const std::vector<std::string>& words)
{
    for (const auto& word : words)
        EXPECT_NE (text.find (word), std::string::npos) << "no " << word << " in: " << text;
}

} // namespace

TEST_F (SourceCommand, SaysWhatIsMissingWhyAndWhoHasIt)
{
    const auto result = run ({ "--key", "C4" });
    EXPECT_EQ (result.status, 0) << result.err;
    expectWords (result.out,
                 { "Hollow 8 of Small, Manual", "common practice, no source", "C4: 2 of 4 wanted partials are in",
                   "h2, harmonic 2 at 523.3 Hz, wanted at -30.0 dB: absent",
                   "\"S, 8\", square, 8 ft: its half-waves are alike (half-wave symmetry)",
                   "(square, 4 ft) has it as its harmonic 1 at 0.00 dB: mix it in at -30.00 dB",
                   "by a resistor 31.6228 times theirs",
                   "Stairs (staircase, 8 ft) has it as its harmonic 2 at -6.02 dB" });
}

TEST_F (SourceCommand, PrintsRowsForEveryBus)
{
    const auto result = run ({ "--keys", "C4 C7", "--csv" });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (firstLine (result.out), header);
    const auto rows = csvTable (result.out);
    ASSERT_EQ (rows.size(), 5U + 5U);
    EXPECT_EQ (rows[0].at ("state"), "present");
    EXPECT_EQ (rows[0].at ("bus"), "");
    EXPECT_EQ (rows[1].at ("cause"), "half-wave symmetry");
    EXPECT_EQ (rows[1].at ("source_db"), "-inf");
    EXPECT_EQ (rows[1].at ("bus"), "S \"4\"");
    EXPECT_NEAR (std::stod (rows[1].at ("ratio_db")), -30.0, 1e-9);
    EXPECT_NEAR (std::stod (rows[1].at ("ratio")), 0.0316227766017, 1e-12);
    EXPECT_NEAR (std::stod (rows[1].at ("resistor_ratio")), 31.6227766017, 1e-9);
    EXPECT_EQ (rows[2].at ("bus"), "Stairs");
    EXPECT_EQ (rows[3].at ("entry"), "h8");
    EXPECT_EQ (rows[3].at ("bus"), "Stairs") << "the 4 ft square has h8 as its fourth, and so not at all";
    EXPECT_EQ (rows[4].at ("state"), "present") << "h11, at -20.83 dB";
    // C7: the rank of 16.7 kHz is not there, and h11 lies above 20 kHz.
    EXPECT_EQ (rows[8].at ("key"), "C7");
    EXPECT_EQ (rows[8].at ("entry"), "h8");
    EXPECT_EQ (rows[8].at ("bus"), "");
    EXPECT_EQ (rows[9].at ("state"), "above 20 kHz");
    EXPECT_EQ (rows[9].at ("cause"), "above 20 kHz");
}

TEST_F (SourceCommand, TheLimitIsAnOption)
{
    EXPECT_NE (run ({ "--key", "C4", "--limit", "0.5" }).out.find ("only at -20.83 dB"), std::string::npos);
    EXPECT_EQ (run ({ "--key", "C4" }).out.find ("only at"), std::string::npos);
    EXPECT_EQ (run ({ "--limit", "-1" }).status, 2);
}

TEST_F (SourceCommand, TakesTheCsWhenNoKeyIsNamed)
{
    const auto rows = csvTable (run ({ "--csv" }).out);
    std::vector<std::string> keys;
    for (const auto& row : rows)
        if (keys.empty() || keys.back() != row.at ("key"))
            keys.push_back (row.at ("key"));
    EXPECT_EQ (keys, (std::vector<std::string> { "C2", "C3", "C4", "C5", "C6", "C7" }));
}

TEST_F (SourceCommand, RefusesWithOneSentence)
{
    const auto expectFault = [] (const ProgramResult& result, int status, const std::string& word)
    {
        EXPECT_EQ (result.status, status) << result.out;
        EXPECT_EQ (result.errorLines(), 1) << result.err;
        EXPECT_NE (result.err.find (word), std::string::npos) << "no " << word << " in: " << result.err;
    };
    expectFault (run ({ "--key", "C8" }), 1, "C2 to C7");
    expectFault (runProgram ({ "source", organ_, "--stop", "Blank", "--mask", mask_ }), 1, "blank");
    expectFault (runProgram ({ "source", organ_, "--stop", "Holow 8", "--mask", mask_ }), 1, "Hollow 8");
    expectFault (runProgram ({ "source", organ_, "--stop", "Hollow 8", "--mask", organ_ }), 1, "a mask is wanted");
    expectFault (runProgram ({ "source", mask_, "--stop", "Hollow 8", "--mask", mask_ }), 1, "an instrument is wanted");
    expectFault (runProgram ({ "source", organ_, "--mask", mask_ }), 2, "--stop");
}

TEST (SourceCommandLarkfield, AStoppedFluteHasNoDiapasonInIt)
{
    const auto result = runProgram ({ "source", preset ("LarkfieldOrgan.json"), "--stop", "Stopped flute 8", "--mask",
                                      preset ("Masks/Diapason8.json") });
    EXPECT_EQ (result.status, 0) << result.err;
    // A 4 ft square on an outphased bus: 20 log |1 - 2 x 0.46| = -21.94 dB re a sawtooth, closed form.
    expectWords (result.out, { "C4: 9 of 10", "h2, harmonic 2", "only at -27.96 dB", "-21.94 dB re a sawtooth's",
                               "\"Square 4\" (square, 4 ft) has it as its harmonic 1",
                               "no mixture reaches the wanted level, but tapped alone it is within the tolerance" });
}

} // namespace stopwright

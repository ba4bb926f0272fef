// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgramRun.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace stopwright
{

namespace
{

/// A square of 2 V peak to peak behind 47 k, nothing else.
constexpr const char* bareCard = R"({ "stopwright": 1, "kind": "card", "name": "Bare", "taps": [
  { "name": "W", "wave": "square", "footage": "8", "vpp": 2.0, "sourceOhms": "47k", "node": "a" } ],
  "parts": [], "output": "a" })";

std::vector<double> rowOf (const std::vector<std::string>& arguments)
{
    std::vector<std::string> all { "expect" };
    all.insert (all.end(), arguments.begin(), arguments.end());
    all.emplace_back ("--csv");
    const auto result = runProgram (all);
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (
        firstLine (result.out),
        "key,frequency_hz,peak_to_peak_v,highest_v,lowest_v,true_rms_v,average_meter_v,loaded_peak_to_peak_v,"
        "loaded_true_rms_v,loaded_average_meter_v,load_rms_db,load_at_pitch_db,load_corner_hz,source_ohm,noise_v,"
        "noise_gain,bleed_db,bleed_a_db,bleed_fundamentals_db");
    const auto rows = csvRows (result.out);
    return rows.empty() ? std::vector<double> (19) : rows.front();
}

} // namespace

// Closed forms: meters on a square, dividers, the pole of a 1x probe, 4 k T R B, w R C.
TEST (ExpectCommand, ABareSquareBehind47k)
{
    const ScratchFolder scratch;
    const auto row = rowOf ({ scratch.write ("bare.json", bareCard), "--key", "A3", "--probe", "1x" });
    EXPECT_NEAR (row[1], 220.0, 1e-9);
    EXPECT_NEAR (row[2], 2.0, 1e-5);
    EXPECT_NEAR (row[3], 1.0, 1e-5);
    EXPECT_NEAR (row[4], -1.0, 1e-5);
    EXPECT_NEAR (row[5], 1.0, 2e-4);
    EXPECT_NEAR (20.0 * std::log10 (row[6] / row[5]), 0.912, 0.001);
    EXPECT_NEAR (row[11], -0.399, 0.001);
    EXPECT_NEAR (row[12], 35.5e3, 50.0);
    EXPECT_NEAR (row[13], 47e3, 1e-6);
    EXPECT_NEAR (row[14], 3.932e-6, 0.001e-6); // 19.98 kHz at 298.15 K
    EXPECT_EQ (row[15], 1.0);
    EXPECT_NEAR (row[18], -48.54, 0.03); // 60 idle keys of C2 .. C7, closed form
    const auto line = rowOf ({ scratch.write ("bare.json", bareCard), "--key", "A3", "--probe", "10k/0" });
    EXPECT_NEAR (line[10], -15.117, 0.001);
    EXPECT_NEAR (line[11], -15.117, 0.001);
    const auto warm = rowOf ({ scratch.write ("bare.json", bareCard), "--key", "A3", "--kelvin", "300" });
    EXPECT_NEAR (warm[14] / row[14], std::sqrt (300.0 / 298.15), 1e-9);
}

TEST (ExpectCommand, PlacesOfAStop)
{
    const auto organ = preset ("LarkfieldOrgan.json");
    const auto card = rowOf ({ organ, "--stop", "Stopped flute 8", "--key", "C4" });
    const auto node = rowOf ({ organ, "--stop", "Stopped flute 8", "--key", "C4", "--at", "card" });
    const auto bus = rowOf ({ organ, "--stop", "Stopped flute 8", "--key", "C4", "--at", "bus" });
    const auto preamp =
        rowOf ({ organ, "--stop", "Stopped flute 8", "--key", "C4", "--at", "preamp", "--probe", "10x" });
    EXPECT_EQ (card, node);
    EXPECT_GT (card[13], 1000.0);
    EXPECT_EQ (bus[13], 0.0);
    EXPECT_GT (bus[15], 2.0);
    EXPECT_NEAR (preamp[5] / bus[5], 2.5, 0.01);   // its gain
    EXPECT_NEAR (preamp[14] / bus[14], 2.5, 0.01); // of noise as well
    EXPECT_EQ (preamp[10], 0.0) << "an amplifier's output does not mind a probe";
}

TEST (ExpectCommand, AWaveIsOnePeriod)
{
    const ScratchFolder scratch;
    const auto result = runProgram ({ "expect", scratch.write ("bare.json", bareCard), "--key", "A4", "--wave" });
    ASSERT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (firstLine (result.out), "time_s,volts");
    const auto rows = csvRows (result.out);
    ASSERT_EQ (rows.size(), 2048U);
    EXPECT_EQ (rows[0][0], 0.0);
    EXPECT_NEAR (rows[1][0], 1.0 / 440.0 / 2048.0, 1e-12);
    EXPECT_NEAR (rows[512][1], 1.0, 1e-5);
    EXPECT_NEAR (rows[1536][1], -1.0, 1e-5);
}

TEST (ExpectCommand, SeveralKeysAndTables)
{
    const auto result = runProgram (
        { "expect", preset ("LarkfieldOrgan.json"), "--stop", "Krummhorn 8", "--key", "C2 C4", "--probe", "line" });
    ASSERT_EQ (result.status, 0) << result.err;
    for (const std::string word : { "C2", "C4", "true rms", "averaging meter", "10.0 kΩ", "A-weighted", "298.15 K" })
        EXPECT_NE (result.out.find (word), std::string::npos) << word;
}

TEST (ExpectCommand, BadInputIsOneSentence)
{
    const auto organ = preset ("LarkfieldOrgan.json");
    const auto card = preset ("Krummhorn8.json");
    for (const std::vector<std::string>& arguments :
         { std::vector<std::string> { organ, "--key", "C4" },
           { organ, "--stop", "Kinura 8", "--key", "C4" },
           { organ, "--stop", "Oboe 8", "--key", "C4", "--division", "Pedal" },
           { organ, "--stop", "Oboe 8", "--key", "C8" },
           { organ, "--stop", "Oboe 8", "--key", "C4", "--node", "nowhere" },
           { card, "--key", "C4", "--node", "nowhere" },
           { card, "--key", "C4", "--at", "bus" },
           { card, "--key", "C4", "--stop", "Oboe 8" },
           { card, "--key", "G9", "--instrument", organ },
           { card, "--key", "C4 C5", "--wave" } })
    {
        std::vector<std::string> all { "expect" };
        all.insert (all.end(), arguments.begin(), arguments.end());
        const auto result = runProgram (all);
        EXPECT_EQ (result.status, 1) << result.err;
        EXPECT_EQ (result.errorLines(), 1) << result.err;
    }
    for (const std::vector<std::string>& arguments :
         { std::vector<std::string> { card },
           { card, "--key", "C4", "--probe", "3x" },
           { card, "--key", "C4", "--probe", "0/1p" },
           { card, "--key", "C4", "--at", "moon" },
           { organ, "--stop", "Oboe 8", "--key", "C4", "--at", "bus", "--node", "t" } })
    {
        std::vector<std::string> all { "expect" };
        all.insert (all.end(), arguments.begin(), arguments.end());
        const auto result = runProgram (all);
        EXPECT_EQ (result.status, 2) << result.err;
        EXPECT_EQ (result.errorLines(), 1) << result.err;
    }
}

} // namespace stopwright

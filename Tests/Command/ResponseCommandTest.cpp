// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgramRun.h"
#include "Organ/CardDocument.h"
#include "Study/ResponseTable.h"
#include "Support/Tolerances.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>

namespace stopwright
{

namespace
{

/// A shunt tank behind a large resistor.
constexpr const char* tankCard = R"({ "stopwright": 1, "kind": "card", "name": "Tank", "taps": [
  { "name": "W1", "wave": "staircase", "ranks": 4, "footage": "8", "vpp": 2.0, "sourceOhms": 0, "node": "in" } ],
  "parts": [ { "name": "R1", "kind": "resistor", "nodes": ["in", "t"], "value": "47k" },
             { "name": "L1", "kind": "inductor", "nodes": ["t", "0"], "value": "1H", "windingOhms": 150, "selfFarads": 0 },
             { "name": "C1", "kind": "capacitor", "nodes": ["t", "0"], "value": "22n" },
             { "name": "R2", "kind": "resistor", "nodes": ["t", "0"], "value": "100k" } ], "output": "t" })";

std::complex<double> tank (double frequencyHz)
{
    const std::complex<double> s (0.0, 2.0 * std::numbers::pi * frequencyHz);
    return (1.0 / 47e3) / (1.0 / 47e3 + 1.0 / 100e3 + s * 22e-9 + 1.0 / (150.0 + s));
}

} // namespace

TEST (ResponseCommand, MatchesTheClosedFormOfATank)
{
    const ScratchFolder scratch;
    const auto result = runProgram ({ "response", scratch.write ("tank.json", tankCard), "--from", "100", "--to", "10k",
                                      "--points", "41", "--csv" });
    ASSERT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (firstLine (result.out), "frequency_hz,magnitude_db,phase_deg");
    const auto rows = csvRows (result.out);
    ASSERT_EQ (rows.size(), 41U);
    EXPECT_DOUBLE_EQ (rows.front()[0], 100.0);
    EXPECT_DOUBLE_EQ (rows.back()[0], 10000.0);
    for (std::size_t i = 0; i < rows.size(); ++i)
    {
        const auto wanted = tank (rows[i][0]);
        EXPECT_NEAR (rows[i][0], 100.0 * std::pow (100.0, static_cast<double> (i) / 40.0), 1e-7);
        EXPECT_NEAR (std::pow (10.0, rows[i][1] / 20.0), std::abs (wanted),
                     tolerance::transferFunction * std::abs (wanted));
        EXPECT_NEAR (rows[i][2], std::arg (wanted) * 180.0 / std::numbers::pi, 1e-7);
    }
}

TEST (ResponseCommand, PrintsWhatTheLibraryComputes)
{
    const auto file = preset ("Clarinet8.json");
    const auto result = runProgram ({ "response", file, "--tap", "Staircase 8", "--node", "e", "--csv" });
    ASSERT_EQ (result.status, 0) << result.err;
    const ResponseRequest request { .tap = std::string ("Staircase 8"), .node = std::string ("e") };
    const auto wanted = responseTable (readCard (file), request);
    const auto rows = csvRows (result.out);
    ASSERT_EQ (rows.size(), wanted.size());
    for (std::size_t i = 0; i < rows.size(); ++i)
    {
        EXPECT_NEAR (rows[i][0], wanted[i].frequencyHz, tolerance::transferFunction * wanted[i].frequencyHz);
        EXPECT_NEAR (rows[i][1], wanted[i].magnitudeDb, tolerance::transferFunction * std::abs (wanted[i].magnitudeDb));
        EXPECT_NEAR (rows[i][2], wanted[i].phaseDegrees, tolerance::transferFunction * 180.0);
    }
}

TEST (ResponseCommand, NamesATapOrNodeThatIsNotThere)
{
    for (const std::string option : { "--tap", "--node" })
    {
        const auto result = runProgram ({ "response", preset ("Clarinet8.json"), option, "nowhere" });
        EXPECT_EQ (result.status, 1);
        EXPECT_EQ (result.out, "");
        EXPECT_EQ (result.errorLines(), 1);
        EXPECT_NE (result.err.find ("nowhere"), std::string::npos) << result.err;
    }
}

TEST (ResponseCommand, AsksForACardWhenGivenAnInstrument)
{
    const auto result = runProgram ({ "response", preset ("LarkfieldOrgan.json") });
    EXPECT_EQ (result.status, 1);
    EXPECT_EQ (result.errorLines(), 1);
    EXPECT_NE (result.err.find ("a card is wanted"), std::string::npos) << result.err;
}

TEST (ResponseCommand, TableIsForTheEye)
{
    const auto result = runProgram ({ "response", preset ("Clarinet8.json"), "--points", "3" });
    EXPECT_EQ (result.status, 0);
    EXPECT_NE (result.out.find ("frequency Hz  level dB  phase deg"), std::string::npos) << result.out;
    EXPECT_NE (result.out.find ("20000.00"), std::string::npos);
}

} // namespace stopwright

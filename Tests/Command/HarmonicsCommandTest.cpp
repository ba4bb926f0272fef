// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgramRun.h"
#include "Organ/CardDocument.h"
#include "Organ/InstrumentDocument.h"
#include "Study/HarmonicTable.h"
#include "Support/Tolerances.h"
#include "Units/Pitch.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr const char* tankCard = R"({ "stopwright": 1, "kind": "card", "name": "Tank", "taps": [
  { "name": "W1", "wave": "staircase", "ranks": 4, "footage": "FOOT", "vpp": 2.0, "sourceOhms": 0, "node": "in" } ],
  "parts": [ { "name": "R1", "kind": "resistor", "nodes": ["in", "t"], "value": "47k" },
             { "name": "L1", "kind": "inductor", "nodes": ["t", "0"], "value": "1H", "windingOhms": 150, "selfFarads": 0 },
             { "name": "C1", "kind": "capacitor", "nodes": ["t", "0"], "value": "22n" },
             { "name": "R2", "kind": "resistor", "nodes": ["t", "0"], "value": "100k" } ], "output": "t" })";

std::string cardAt (const std::string& footage)
{
    std::string text = tankCard;
    return text.replace (text.find ("FOOT"), 4, footage);
}

double tank (double frequencyHz)
{
    const std::complex<double> s (0.0, 2.0 * std::numbers::pi * frequencyHz);
    return std::abs ((1.0 / 47e3) / (1.0 / 47e3 + 1.0 / 100e3 + s * 22e-9 + 1.0 / (150.0 + s)));
}

std::vector<std::vector<double>> harmonicsOf (const std::vector<std::string>& arguments)
{
    std::vector<std::string> all { "harmonics" };
    all.insert (all.end(), arguments.begin(), arguments.end());
    all.emplace_back ("--csv");
    const auto result = runProgram (all);
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (firstLine (result.out), "harmonic,frequency_hz,source_peak_v,output_peak_v,output_db");
    return csvRows (result.out);
}

} // namespace

TEST (HarmonicsCommand, MatchesFourierSeriesTimesClosedForm)
{
    const ScratchFolder scratch;
    const auto rows = harmonicsOf ({ scratch.write ("tank.json", cardAt ("8")), "--key", "C3" });
    const double fundamentalHz = equalTemperedHz (48);
    ASSERT_EQ (rows.size(), static_cast<std::size_t> (20000.0 / fundamentalHz));
    for (std::size_t i = 0; i < rows.size(); ++i)
    {
        const int n = static_cast<int> (i) + 1;
        const double frequencyHz = n * fundamentalHz;
        const double source = n % 16 == 0 ? 0.0 : 4.0 / (std::numbers::pi * n); // a +-1 V staircase of four ranks
        const double output = source * tank (frequencyHz);
        EXPECT_DOUBLE_EQ (rows[i][0], n);
        EXPECT_NEAR (rows[i][1], frequencyHz, tolerance::transferFunction * frequencyHz);
        EXPECT_NEAR (rows[i][2], source, tolerance::transferFunction * source);
        EXPECT_NEAR (rows[i][3], output, tolerance::transferFunction * output);
        EXPECT_EQ (std::isinf (rows[i][4]), n % 16 == 0) << "harmonic " << n;
    }
}

TEST (HarmonicsCommand, LevelsOfAStaircaseThroughATank)
{
    // dB re the strongest, worked out separately to 0.01 dB: Fourier series of the staircase times the shunt tank.
    const ScratchFolder scratch;
    const auto rows = harmonicsOf ({ scratch.write ("tank.json", cardAt ("8")), "--key", "C4" });
    const std::vector<double> wanted { -12.12, -10.41, -6.60, 0.0, -7.58, -14.11, -18.43, -21.69, -24.33, -26.57 };
    for (std::size_t i = 0; i < wanted.size(); ++i)
        EXPECT_NEAR (rows.at (i)[4], wanted[i], 0.0051) << "harmonic " << i + 1;
}

TEST (HarmonicsCommand, CountsFromTheEightFootPitch)
{
    const ScratchFolder scratch;
    const auto sixteen = harmonicsOf ({ scratch.write ("16.json", cardAt ("16")), "--key", "C4" });
    EXPECT_DOUBLE_EQ (sixteen.at (0)[0], 0.5);
    EXPECT_NEAR (sixteen.at (0)[1], 0.5 * equalTemperedHz (60), 1e-7);
    EXPECT_DOUBLE_EQ (sixteen.at (1)[0], 1.0);

    const auto twelfth = harmonicsOf ({ scratch.write ("twelfth.json", cardAt ("2 2/3")), "--key", "C4" });
    EXPECT_DOUBLE_EQ (twelfth.at (0)[0], 3.0);
}

TEST (HarmonicsCommand, PrintsWhatTheLibraryComputes)
{
    const auto file = preset ("Krummhorn8.json");
    const auto rows = harmonicsOf ({ file, "--key", "F#3" });
    const auto card = readCard (file);
    const auto wanted = harmonicTable (card, keySourceForCardAlone (card), 54);
    ASSERT_EQ (rows.size(), wanted.size());
    for (std::size_t i = 0; i < rows.size(); ++i)
    {
        EXPECT_NEAR (rows[i][1], wanted[i].frequencyHz, tolerance::transferFunction * wanted[i].frequencyHz);
        EXPECT_NEAR (rows[i][2], wanted[i].sourcePeakVolts, tolerance::transferFunction * wanted[i].sourcePeakVolts);
        EXPECT_NEAR (rows[i][3], wanted[i].outputPeakVolts, tolerance::transferFunction * wanted[i].outputPeakVolts);
    }
}

TEST (HarmonicsCommand, AnInstrumentHasItsOwnGenerators)
{
    const ScratchFolder scratch;
    const auto card = scratch.write ("tank.json", cardAt ("8"));
    const auto organ = preset ("LarkfieldOrgan.json");

    // C7 needs the rank an octave above C9 for its eighth harmonic, and there is none.
    const auto rows = harmonicsOf ({ card, "--key", "C7", "--instrument", organ });
    EXPECT_TRUE (std::isinf (rows.at (7)[4]));
    EXPECT_DOUBLE_EQ (rows.at (7)[2], 0.0);
    EXPECT_GT (rows.at (6)[2], 0.0);
    EXPECT_GT (harmonicsOf ({ card, "--key", "C7" }).at (7)[2], 0.0) << "a card alone has all its generators";

    // 2.00024 MHz / (402 x 2^4) for D#4.
    const auto sharp = harmonicsOf ({ card, "--key", "D#4", "--instrument", organ });
    EXPECT_NEAR (sharp.at (0)[1], 2000240.0 / (402.0 * 16.0), 1e-7);
}

TEST (HarmonicsCommand, NamesADivisionThatIsNotThere)
{
    const auto result = runProgram ({ "harmonics", preset ("Krummhorn8.json"), "--key", "C4", "--instrument",
                                      preset ("LarkfieldOrgan.json"), "--division", "Attic" });
    EXPECT_EQ (result.status, 1);
    EXPECT_EQ (result.errorLines(), 1);
    EXPECT_NE (result.err.find ("Attic"), std::string::npos) << result.err;
}

TEST (HarmonicsCommand, NamesTheFaultOfANetwork)
{
    const ScratchFolder scratch;
    auto text = cardAt ("8");
    text.replace (text.find ("[\"in\", \"t\"]"), 11, "[\"in\", \"in\"]");
    const auto result = runProgram ({ "harmonics", scratch.write ("fault.json", text), "--key", "C4" });
    EXPECT_EQ (result.status, 1);
    EXPECT_EQ (result.errorLines(), 1);
    EXPECT_NE (result.err.find ("fault.json"), std::string::npos) << result.err;
    EXPECT_NE (result.err.find ("R1"), std::string::npos) << result.err;
}

TEST (HarmonicsCommand, TableSaysWhichPartialsAreAbsent)
{
    const auto result = runProgram ({ "harmonics", preset ("Quint2-2-3.json"), "--key", "C4" });
    EXPECT_EQ (result.status, 0);
    EXPECT_NE (result.out.find ("output dB"), std::string::npos);
    EXPECT_NE (result.out.find ("absent"), std::string::npos) << "a square has no even partials";
    EXPECT_NE (result.out.find ("rms"), std::string::npos);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgramRun.h"
#include "Command/WavReading.h"
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"

#include <gtest/gtest.h>

#include <sys/stat.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>

namespace stopwright
{

namespace
{

const std::string krummhorn = preset ("Krummhorn8.json");
const std::string phrase = preset ("DemonstrationPhrase.mid");

std::string bytesOf (const std::filesystem::path& file)
{
    std::ostringstream text;
    text << std::ifstream (file, std::ios::binary).rdbuf();
    return text.str();
}

/// A refusal: status 1, one sentence, and no file left but those named.
void expectRefusal (const ScratchFolder& scratch,
                    const ProgramResult& result,
                    const std::string& word,
                    const std::vector<std::string>& files)
{
    EXPECT_EQ (result.status, 1);
    EXPECT_EQ (result.out, "");
    EXPECT_EQ (result.errorLines(), 1) << result.err;
    EXPECT_NE (result.err.find (word), std::string::npos) << "no " << word << " in: " << result.err;
    EXPECT_EQ (scratch.files(), files);
}

} // namespace

TEST (RenderCommand, WritesFloatWavOfTheStatedLength)
{
    for (const std::string rate : { "44100", "48000", "192000" })
    {
        const ScratchFolder scratch;
        const auto out = scratch / "a.wav";
        const auto result = runProgram (
            { "render", krummhorn, "--keys", "C4, E4", "--seconds", "0.5", "--rate", rate, "--out", out.string() });
        ASSERT_EQ (result.status, 0) << result.err;
        EXPECT_EQ (result.err, "") << "no progress where standard error is no terminal";
        const auto wav = readWav (out);
        EXPECT_TRUE (wav.isFloatWav);
        EXPECT_EQ (wav.channels, 1);
        EXPECT_EQ (wav.rateHz, std::stoi (rate));
        EXPECT_EQ (wav.samples.size(), static_cast<std::size_t> (std::stoi (rate) / 2));
        EXPECT_EQ (scratch.files(), std::vector<std::string> { "a.wav" });
    }
}

TEST (RenderCommand, PartialsAreThoseOfTheHarmonicsCommand)
{
    const ScratchFolder scratch;
    const auto out = scratch / "a.wav";
    ASSERT_EQ (runProgram ({ "render", krummhorn, "--keys", "C3", "--seconds", "2", "--out", out.string() }).status, 0);
    const auto wav = readWav (out);
    const std::span<const double> steady (wav.samples.data() + wav.rateHz / 2, static_cast<std::size_t> (wav.rateHz));

    const auto table = runProgram ({ "harmonics", krummhorn, "--key", "C3", "--csv" });
    int compared = 0;
    for (const auto& row : csvRows (table.out))
    {
        constexpr double highestHz = 10000.0;
        if (row[4] < tolerance::renderedFloorDb || row[1] > highestHz)
            continue;
        const double measured = std::abs (windowedPartial (steady, row[1], wav.rateHz));
        EXPECT_NEAR (20.0 * std::log10 (measured / row[3]), 0.0, tolerance::renderedLevelDb) << "harmonic " << row[0];
        ++compared;
    }
    EXPECT_GT (compared, 30);
}

TEST (RenderCommand, EqualRenderingsAreEqualBytes)
{
    const ScratchFolder scratch;
    for (const std::string name : { "a.wav", "b.wav" })
        ASSERT_EQ (
            runProgram ({ "render", krummhorn, "--keys", "C4", "--seconds", "0.2", "--out", (scratch / name).string() })
                .status,
            0);
    EXPECT_EQ (bytesOf (scratch / "a.wav"), bytesOf (scratch / "b.wav"));
}

TEST (RenderCommand, PlaysTheDemonstrationPhrase)
{
    const ScratchFolder scratch;
    const auto out = scratch / "a.wav";
    const auto result =
        runProgram ({ "render", krummhorn, "--midi", phrase, "--scale", "listening", "--out", out.string() });
    ASSERT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (result.err, "");
    const auto wav = readWav (out);
    // The phrase ends at beat 29.5 of 120 a minute, and half a second of ring-out follows.
    EXPECT_NEAR (static_cast<double> (wav.samples.size()) / wav.rateHz, 14.75 + 0.5, 0.001);
    const auto [lowest, highest] = std::minmax_element (wav.samples.begin(), wav.samples.end());
    EXPECT_LT (std::max (*highest, -*lowest), 1.0);
    EXPECT_GT (*highest, 0.001);
    EXPECT_NEAR (wav.samples.back(), 0.0, 1e-4) << "the ring-out is over";
}

TEST (RenderCommand, ATailAddsToTheLength)
{
    const ScratchFolder scratch;
    const auto out = scratch / "a.wav";
    ASSERT_EQ (runProgram (
                   { "render", krummhorn, "--keys", "C4", "--seconds", "0.5", "--tail", "0.25", "--out", out.string() })
                   .status,
               0);
    const auto wav = readWav (out);
    EXPECT_EQ (wav.samples.size(), 36000U);
    const auto peakOf = [&] (std::size_t from, std::size_t to)
    {
        double peak = 0.0;
        for (std::size_t i = from; i < to; ++i)
            peak = std::max (peak, std::abs (wav.samples[i]));
        return peak;
    };
    EXPECT_GT (peakOf (12000, 24000), 0.01);
    EXPECT_LT (peakOf (33600, 36000), 1e-4);
}

TEST (RenderCommand, NeverOverwritesWhatItReads)
{
    const ScratchFolder scratch;
    const auto card = scratch.write ("card.json", bytesOf (krummhorn));
    const auto midi = scratch.write ("phrase.mid", bytesOf (phrase));
    const std::vector<std::string> files { "card.json", "phrase.mid" };
    expectRefusal (scratch, runProgram ({ "render", card, "--keys", "C4", "--seconds", "1", "--out", card }),
                   "name another file", files);
    expectRefusal (scratch, runProgram ({ "render", card, "--midi", midi, "--out", midi }), "name another file", files);
    EXPECT_EQ (bytesOf (card), bytesOf (krummhorn));
    EXPECT_EQ (bytesOf (midi), bytesOf (phrase));
}

TEST (RenderCommand, RefusesPlacesThatCannotBeWritten)
{
    const ScratchFolder scratch;
    const auto render = [&] (const std::string& out) {
        return runProgram ({ "render", krummhorn, "--keys", "C4", "--seconds", "0.2", "--out", out });
    };
    expectRefusal (scratch, render ((scratch / "no/such/folder.wav").string()), "folder.wav", {});
    expectRefusal (scratch, render (scratch.path().string()), "directory", {});
    const auto pipe = scratch / "pipe";
    ASSERT_EQ (::mkfifo (pipe.c_str(), 0600), 0);
    expectRefusal (scratch, render (pipe.string()), "regular file", { "pipe" });
    EXPECT_TRUE (std::filesystem::is_fifo (pipe));
}

TEST (RenderCommand, AFullDiscLeavesWhatWasThere)
{
    const ScratchFolder scratch;
    const auto out = scratch.write ("a.wav", "before");
    RunOptions options;
    options.fileSizeLimit = 100000;
    const auto result = runProgram ({ "render", krummhorn, "--keys", "C4", "--seconds", "2", "--out", out }, options);
    expectRefusal (scratch, result, "cannot be written", { "a.wav" });
    EXPECT_EQ (bytesOf (out), "before");
}

TEST (RenderCommand, AnInterruptLeavesNothing)
{
    const ScratchFolder scratch;
    RunOptions options;
    options.interruptWhen = scratch.path();
    const auto result = runProgram (
        { "render", krummhorn, "--keys", "C4", "--seconds", "3600", "--out", (scratch / "a.wav").string() }, options);
    EXPECT_EQ (result.status, 130);
    EXPECT_EQ (result.errorLines(), 1) << result.err;
    EXPECT_TRUE (scratch.files().empty());
}

TEST (RenderCommand, AnInstrumentHasACompass)
{
    const ScratchFolder scratch;
    const auto out = (scratch / "a.wav").string();
    const std::vector<std::string> held { "render", krummhorn, "--keys", "B1", "--seconds", "0.2", "--out", out };
    auto onTheOrgan = held;
    onTheOrgan.insert (onTheOrgan.end(), { "--instrument", preset ("LarkfieldOrgan.json") });
    expectRefusal (scratch, runProgram (onTheOrgan), "B1", {});
    EXPECT_EQ (runProgram (held).status, 0) << "a card alone answers every key";

    const auto pedal = runProgram ({ "render", krummhorn, "--midi", phrase, "--instrument",
                                     preset ("LarkfieldOrgan.json"), "--division", "Pedal", "--out", out });
    EXPECT_EQ (pedal.status, 0);
    EXPECT_NE (pedal.err.find ("left out"), std::string::npos) << "the phrase goes above F4";
}

TEST (RenderCommand, RefusesAMidiFileThatIsNone)
{
    const ScratchFolder scratch;
    const auto out = (scratch / "a.wav").string();
    const auto render = [&] (const std::string& midi) {
        return runProgram ({ "render", krummhorn, "--midi", midi, "--out", out });
    };
    expectRefusal (scratch, render (krummhorn), "MThd", {});
    expectRefusal (scratch, render ((scratch / "absent.mid").string()), "absent.mid", {});
    expectRefusal (scratch, render (scratch.path().string()), "directory", {});
    const auto cut = scratch.write ("cut.mid", bytesOf (phrase).substr (0, 300));
    expectRefusal (scratch, render (cut), "cut off", { "cut.mid" });
}

} // namespace stopwright

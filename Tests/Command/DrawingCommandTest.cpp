// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgramRun.h"
#include "Organ/CardDocument.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

namespace stopwright
{

namespace
{

std::string contents (const std::filesystem::path& file)
{
    std::ifstream stream (file, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}

} // namespace

TEST (DrawingCommand, EveryPartOfTheCardStandsInTheFile)
{
    const ScratchFolder folder;
    const auto file = folder / "krummhorn.svg";
    const auto result = runProgram ({ "drawing", preset ("Krummhorn8.json"), "--out", file.string() });
    EXPECT_EQ (result.status, 0) << result.err;
    const auto svg = contents (file);
    EXPECT_EQ (svg.rfind ("<?xml", 0), 0U);
    for (const auto& part : readCard (preset ("Krummhorn8.json")).parts)
        EXPECT_NE (svg.find (">" + part.name), std::string::npos) << part.name;
}

TEST (DrawingCommand, AStopOfAnInstrumentIsDrawnAsItsCard)
{
    const ScratchFolder folder;
    const auto alone = folder / "alone.svg";
    const auto stop = folder / "stop.svg";
    runProgram ({ "drawing", preset ("Oboe8.json"), "--out", alone.string() });
    const auto result =
        runProgram ({ "drawing", preset ("LarkfieldOrgan.json"), "--stop", "Oboe 8", "--out", stop.string() });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (contents (stop), contents (alone));
    const auto zigzag = folder / "zigzag.svg";
    runProgram ({ "drawing", preset ("Oboe8.json"), "--out", zigzag.string(), "--zigzag" });
    EXPECT_NE (contents (zigzag), contents (alone));
}

TEST (DrawingCommand, ANetworkThatCannotBeComputedIsDrawnToo)
{
    const ScratchFolder folder;
    auto card = readCard (preset ("Krummhorn8.json"));
    card.output = "nowhere";
    const auto file = folder.write ("Broken.json", cardText (card));
    const auto result = runProgram ({ "drawing", file, "--out", (folder / "broken.svg").string() });
    EXPECT_EQ (result.status, 0) << result.err;
}

TEST (DrawingCommand, BadInputIsOneSentenceAndNoFile)
{
    const ScratchFolder folder;
    const auto file = (folder / "none.svg").string();
    for (const auto& arguments : std::vector<std::vector<std::string>> {
             { preset ("LarkfieldOrgan.json"), "--out", file },
             { preset ("LarkfieldOrgan.json"), "--stop", "Obo 8", "--out", file },
             { preset ("Oboe8.json"), "--stop", "Oboe 8", "--out", file },
             { preset ("Absent.json"), "--out", file },
             { preset ("Oboe8.json"), "--out", (folder / "no such folder" / "x.svg").string() } })
    {
        std::vector<std::string> all { "drawing" };
        all.insert (all.end(), arguments.begin(), arguments.end());
        const auto result = runProgram (all);
        EXPECT_EQ (result.status, 1) << result.out;
        EXPECT_EQ (result.errorLines(), 1) << result.err;
        EXPECT_FALSE (std::filesystem::exists (file));
    }
}

} // namespace stopwright

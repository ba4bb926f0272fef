// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgramRun.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace stopwright
{

namespace
{

/// Splits a line as a shell does that knows double quotes only.
std::vector<std::string> words (const std::string& line)
{
    std::vector<std::string> result;
    bool quoted = false;
    bool inWord = false;
    for (const char c : line)
    {
        if (c == '"')
            quoted = ! quoted;
        if (c == '"' || (c == ' ' && ! quoted))
        {
            inWord = inWord && c == '"';
            continue;
        }
        if (! inWord)
            result.emplace_back();
        inWord = true;
        result.back() += c;
    }
    return result;
}

std::vector<std::string> examplesOf (const std::string& help)
{
    std::vector<std::string> examples;
    std::istringstream lines (help);
    for (std::string line; std::getline (lines, line);)
        if (line.starts_with ("  stopwright "))
            examples.push_back (line.substr (std::string ("  stopwright ").size()));
    return examples;
}

/// What the program says there is to do when it is told nothing.
std::vector<std::string> allJobs()
{
    std::string text = runProgram ({}).err;
    text = text.substr (0, text.find (';')).substr (text.find ("do: ") + 4);
    if (const auto last = text.find (" or "); last != std::string::npos)
        text.replace (last, 4, ", ");
    std::vector<std::string> names;
    std::istringstream parts (text);
    for (std::string name; std::getline (parts, name, ',');)
        names.push_back (name.substr (name.find_first_not_of (' ')));
    return names;
}

/// The commands that README shows, with the project's own Presets.
std::vector<std::string> examplesOfReadme()
{
    const std::string start = "./stopwright ";
    const std::string fromBuild = "../../../";
    std::vector<std::string> examples;
    std::ifstream readme (std::string (STOPWRIGHT_ROOT) + "/README.md");
    for (std::string line; std::getline (readme, line);)
    {
        if (! line.starts_with (start))
            continue;
        std::string example = line.substr (start.size());
        for (auto place = example.find (fromBuild); place != std::string::npos; place = example.find (fromBuild))
            example.replace (place, fromBuild.size(), "");
        examples.push_back (example);
    }
    return examples;
}

ProgramResult runExample (const std::string& example)
{
    const ScratchFolder scratch;
    RunOptions options;
    options.folder = scratch.path();
    return runProgram (words (example), options);
}

} // namespace

TEST (CommandLine, HelpNamesEveryCommand)
{
    ASSERT_GE (allJobs().size(), 9U) << runProgram ({}).err;
    const auto result = runProgram ({ "--help" });
    EXPECT_EQ (result.status, 0);
    EXPECT_EQ (result.err, "");
    for (const std::string& command : allJobs())
        EXPECT_NE (result.out.find (command), std::string::npos) << command;
}

TEST (CommandLine, TextIsForAChoiceOfWordsOnly)
{
    for (const std::string& command : allJobs())
    {
        std::istringstream help (runProgram ({ command, "--help" }).out);
        int files = 0;
        for (std::string line; std::getline (help, line);)
        {
            files += line.find (" FILE ") != std::string::npos ? 1 : 0;
            const bool isWords = line.find (" or ") != std::string::npos;
            EXPECT_TRUE (line.find (" TEXT ") == std::string::npos || isWords) << command << ": " << line;
        }
        EXPECT_TRUE (files > 0 || command == "glossary") << command;
    }
}

TEST (CommandLine, EveryExampleOfTheHelpWorks)
{
    for (const std::string& command : allJobs())
    {
        const auto help = runProgram ({ command, "--help" });
        ASSERT_EQ (help.status, 0) << command;
        const auto examples = examplesOf (help.out);
        EXPECT_FALSE (examples.empty()) << command;
        for (const auto& example : examples)
        {
            const auto result = runExample (example);
            EXPECT_EQ (result.status, 0) << example << '\n' << result.err;
            EXPECT_EQ (result.err, "") << example;
            EXPECT_NE (result.out, "") << example;
        }
    }
}

TEST (CommandLine, EveryExampleOfReadmeWorks)
{
    const auto examples = examplesOfReadme();
    EXPECT_GE (examples.size(), 5U);
    for (const auto& example : examples)
    {
        const auto result = runExample (example);
        EXPECT_EQ (result.status, 0) << example << '\n' << result.err;
    }
}

TEST (CommandLine, TellsItsVersion)
{
    const auto result = runProgram ({ "--version" });
    EXPECT_EQ (result.status, 0);
    EXPECT_TRUE (result.out.starts_with ("stopwright 1.")) << result.out;
}

TEST (CommandLine, PrintsTheCautions)
{
    const auto result = runProgram ({ "--cautions" });
    EXPECT_EQ (result.status, 0);
    for (const std::string word : { "Mains", "discharge", "Headphones", "models", "licensed", "Low voltage" })
        EXPECT_NE (result.out.find (word), std::string::npos) << word;
}

TEST (CommandLine, WrongUsageIsTwoWithOneLine)
{
    const auto card = preset ("Krummhorn8.json");
    const std::vector<std::vector<std::string>> wrong {
        {},
        { "chekc", card },
        { "check" },
        { "check", card, card },
        { "check", "--frequency" },
        { "response" },
        { "response", card, "--from", "nan" },
        { "response", card, "--from", "-5" },
        { "response", card, "--from", "inf" },
        { "response", card, "--from", "20k", "--to", "20" },
        { "response", card, "--points", "0" },
        { "response", card, "--points", "1e3" },
        { "response", card, "--points", "100001" },
        { "harmonics", card },
        { "harmonics", card, "--key", "H4" },
        { "harmonics", card, "--key", "" },
        { "harmonics", card, "--key", "C4", "--division", "Pedal" },
        { "render", card, "--out", "x.wav" },
        { "render", card, "--keys", "C4", "--seconds", "1" },
        { "render", card, "--out", "x.wav", "--keys", "C4" },
        { "render", card, "--out", "x.wav", "--keys", " , ", "--seconds", "1" },
        { "render", card, "--out", "x.wav", "--keys", "C4", "--seconds", "0" },
        { "render", card, "--out", "x.wav", "--keys", "C4", "--seconds", "3601" },
        { "render", card, "--out", "x.wav", "--keys", "C4", "--seconds", "1", "--midi", "x.mid" },
        { "render", card, "--out", "x.wav", "--midi", "x.mid", "--seconds", "1" },
        { "render", card, "--out", "x.wav", "--keys", "C4", "--seconds", "1", "--rate", "44099" },
        { "render", card, "--out", "x.wav", "--keys", "C4", "--seconds", "1", "--rate", "192001" },
        { "render", card, "--out", "x.wav", "--keys", "C4", "--seconds", "1", "--rate", "48000.5" },
        { "render", card, "--out", "x.wav", "--keys", "C4", "--seconds", "1", "--scale", "loud" },
    };
    for (const auto& arguments : wrong)
    {
        const ScratchFolder scratch;
        RunOptions options;
        options.folder = scratch.path();
        const auto result = runProgram (arguments, options);
        const auto line = ::testing::PrintToString (arguments);
        EXPECT_EQ (result.status, 2) << line;
        EXPECT_EQ (result.out, "") << line;
        EXPECT_EQ (result.errorLines(), 1) << line << '\n' << result.err;
        EXPECT_TRUE (scratch.files().empty()) << line;
    }
}

TEST (CommandLine, AFullDiscUnderStandardOutputIsAnError)
{
    RunOptions options;
    options.standardOutput = "/dev/full";
    const auto result = runProgram ({ "harmonics", preset ("Krummhorn8.json"), "--key", "C2", "--csv" }, options);
    EXPECT_EQ (result.status, 1);
    EXPECT_NE (result.err.find ("standard output"), std::string::npos) << result.err;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
//
// What the help shows as an example works as it stands there.
#include "Command/ProgramRun.h"

#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

namespace stopwright
{
namespace
{

/// The words of a command line; double quotes keep words together.
std::vector<std::string> wordsOf (const std::string& line)
{
    std::vector<std::string> words (1);
    bool isQuoted = false;
    for (const char letter : line)
    {
        if (letter == '"')
            isQuoted = ! isQuoted;
        else if (letter == ' ' && ! isQuoted)
            words.emplace_back();
        else
            words.back() += letter;
    }
    std::erase (words, "");
    return words;
}

/// Lines that begin with two spaces and the program's name, without that name.
std::vector<std::string> examplesIn (const std::string& help)
{
    const std::string mark = "  stopwright ";
    std::vector<std::string> examples;
    std::istringstream lines (help);
    for (std::string line; std::getline (lines, line);)
        if (line.starts_with (mark))
            examples.push_back (line.substr (mark.size()));
    return examples;
}

/// The jobs that the program's help lists.
std::vector<std::string> jobs()
{
    std::vector<std::string> names;
    std::istringstream lines (runProgram ({ "--help" }).out);
    bool isList = false;
    for (std::string line; std::getline (lines, line);)
    {
        if (isList && line.starts_with ("  ") && line.size() > 2 && line[2] != ' ')
            names.push_back (wordsOf (line).front());
        isList = isList || line.find ("ubcommands") != std::string::npos;
    }
    return names;
}

TEST (HelpExamples, AllOfThemWork)
{
    const auto names = jobs();
    ASSERT_GE (names.size(), 5U) << runProgram ({ "--help" }).out;
    for (const auto& name : names)
    {
        const auto examples = examplesIn (runProgram ({ name, "--help" }).out);
        EXPECT_FALSE (examples.empty()) << name;
        for (const auto& example : examples)
        {
            const ScratchFolder folder;
            RunOptions options;
            options.folder = folder.path();
            const auto result = runProgram (wordsOf (example), options);
            EXPECT_EQ (result.status, 0) << example << '\n' << result.err;
        }
    }
}

} // namespace
} // namespace stopwright

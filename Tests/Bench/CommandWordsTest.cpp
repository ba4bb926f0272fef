// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/CommandWords.h"

#include <gtest/gtest.h>

#include <vector>

namespace stopwright
{

namespace
{

CommandWords wordsOf (std::vector<const char*> words)
{
    words.insert (words.begin(), "stopwright-bench");
    return readCommandWords (static_cast<int> (words.size()), words.data());
}

} // namespace

TEST (CommandWords, ADocumentOrNothingOpensTheWindow)
{
    EXPECT_FALSE (wordsOf ({}).exitStatus);
    EXPECT_FALSE (wordsOf ({ "Presets/Krummhorn8.json" }).exitStatus);
}

TEST (CommandWords, HelpAndVersionAreTold)
{
    EXPECT_EQ (wordsOf ({ "--help" }).exitStatus, 0);
    EXPECT_NE (wordsOf ({ "-h" }).text.find ("Usage: stopwright-bench"), std::string::npos);
    EXPECT_EQ (wordsOf ({ "--version" }).exitStatus, 0);
}

TEST (CommandWords, WhatIsNoOptionIsWrongUsage)
{
    EXPECT_EQ (wordsOf ({ "--bogus" }).exitStatus, 2);
    EXPECT_NE (wordsOf ({ "--bogus" }).text.find ("--bogus"), std::string::npos);
    EXPECT_EQ (wordsOf ({ "a.json", "b.json" }).exitStatus, 2);
}

} // namespace stopwright

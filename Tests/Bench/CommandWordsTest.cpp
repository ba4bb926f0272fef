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

TEST (CommandWords, SayWhatIsOpenedDrawnAndPlayed)
{
    const auto words = wordsOf ({ "--stops", " Oboe 8,Diapason 8", "organ.json", "--midi", "-a.mid" });
    EXPECT_FALSE (words.exitStatus);
    EXPECT_EQ (words.document, "organ.json");
    EXPECT_EQ (words.midiFile, "-a.mid");
    EXPECT_EQ (words.stops, (std::vector<std::string> { "Oboe 8", "Diapason 8" }));
}

TEST (CommandWords, WhatIsNoOptionIsWrongUsage)
{
    EXPECT_EQ (wordsOf ({ "--midi" }).exitStatus, 2);
    EXPECT_EQ (wordsOf ({ "a.json", "--stops" }).exitStatus, 2);
    EXPECT_EQ (wordsOf ({ "--stops", " , " }).exitStatus, 2);
    EXPECT_EQ (wordsOf ({ "--bogus" }).exitStatus, 2);
    EXPECT_NE (wordsOf ({ "--bogus" }).text.find ("--bogus"), std::string::npos);
    EXPECT_EQ (wordsOf ({ "a.json", "b.json" }).exitStatus, 2);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
//
// A document of the wrong kind: what it is, what is wanted, what to do, in one sentence.
#include "Command/ProgramRun.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace stopwright
{

namespace
{

struct Wrong
{
    std::vector<std::string> arguments;
    std::string is;
    std::string wanted;
    std::string wayOut;
};

std::ostream& operator<< (std::ostream& out, const Wrong& wrong)
{
    return out << ::testing::PrintToString (wrong.arguments);
}

std::vector<Wrong> wrongDocuments()
{
    const auto card = preset ("Oboe8.json");
    const auto organ = preset ("LarkfieldOrgan.json");
    const auto mask = preset ("Masks/Oboe8.json");
    const std::string either = "but a card or an instrument is wanted here";
    const std::string oneOfThese = "name one of these, for a mask is what a stop is compared with";
    const std::string anOrgan = "but an instrument is wanted here";
    const std::string itsOrgan = "name an instrument that has this card at one of its tablets";
    const std::string aMask = "but a mask is wanted here";
    const std::string presetMask = "name a target mask, such as one of Presets/Masks";
    const std::string aCard = "but a card is wanted here";
    std::vector<Wrong> all {
        { { "compass", mask }, "mask", either, oneOfThese },
        { { "compass", mask, "--stop", "Oboe 8" }, "mask", either, oneOfThese },
        { { "mask", mask, "--mask", mask }, "mask", either, oneOfThese },
        { { "mask", mask, "--stop", "Oboe 8", "--mask", mask }, "mask", either, oneOfThese },
        { { "expect", mask, "--key", "C4" }, "mask", either, oneOfThese },
        { { "expect", mask, "--stop", "Oboe 8", "--key", "C4" }, "mask", either, oneOfThese },
        { { "mask", organ, "--stop", "Oboe 8", "--mask", organ }, "instrument", aMask, presetMask },
        { { "mask", organ, "--stop", "Oboe 8", "--mask", card }, "card", aMask, presetMask },
        { { "source", organ, "--stop", "Oboe 8", "--mask", card }, "card", aMask, presetMask },
        { { "response", organ }, "instrument", aCard, "name the card of one of its tablets" },
        { { "response", mask }, "mask", aCard, "name a card, for a mask is what a stop is compared with" },
        { { "expect", card, "--key", "C4", "--instrument", card }, "card", anOrgan, itsOrgan },
    };
    for (const std::string& file : { card, mask })
        for (const auto& arguments :
             std::vector<std::vector<std::string>> { { "match", file, "--stop", "Oboe 8", "--to", "Oboe 8" },
                                                     { "effect", file, "--stop", "Oboe 8" },
                                                     { "together", file, "--stops", "Oboe 8" },
                                                     { "source", file, "--stop", "Oboe 8", "--mask", mask },
                                                     { "headroom", file } })
            all.push_back ({ arguments, file == card ? "card" : "mask", anOrgan,
                             file == card ? itsOrgan : "name an instrument, for a mask is what a stop" });
    return all;
}

} // namespace

TEST (DocumentKinds, AWrongOneGetsOneSentence)
{
    for (const Wrong& wrong : wrongDocuments())
    {
        const auto result = runProgram (wrong.arguments);
        EXPECT_EQ (result.status, 1) << wrong;
        EXPECT_EQ (result.out, "") << wrong;
        EXPECT_EQ (result.errorLines(), 1) << wrong << result.err;
        const auto is = (wrong.is == "instrument" ? "this is an " : "this is a ") + wrong.is;
        for (const auto& words : { is, wrong.wanted, wrong.wayOut })
            EXPECT_NE (result.err.find (words), std::string::npos) << "no " << words << " in " << wrong << result.err;
    }
}

TEST (DocumentKinds, WhatIsNoDocumentSaysWhatToDo)
{
    const ScratchFolder scratch;
    const auto organ = preset ("LarkfieldOrgan.json");
    for (const auto& [file, words] :
         { std::pair { scratch.write ("empty.json", ""), std::string ("the document is empty; name another file") },
           { (scratch / "nowhere.json").string(), std::string ("check its name and its folder") },
           { scratch.write ("tapless.json", R"({ "stopwright": 1, "kind": "card", "taps": [], "parts": [],
               "output": "a" })"),
             std::string ("the list has 0 entries but must have 1 to 8; add what it lacks") } })
    {
        const auto result = runProgram ({ "compass", file });
        EXPECT_EQ (result.status, 1) << file;
        EXPECT_EQ (result.errorLines(), 1) << result.err;
        EXPECT_NE (result.err.find (words), std::string::npos) << result.err;
    }
}

} // namespace stopwright

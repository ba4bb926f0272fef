// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/Glossary.h"

#include "Organ/DocumentError.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <fstream>
#include <iterator>
#include <string>

namespace stopwright
{

namespace
{

constexpr const char* small = R"JSON({ "terms": [
  { "term": "A-weighting", "also": ["dB(A)"], "text": "Counts bass less, as the ear does." },
  { "term": "bus", "text": "A common conductor.", "see": ["tap"] },
  { "term": "keyed bus", "also": ["collector"], "text": "Carries the keys that are down." },
  { "term": "tap", "text": "Where a stop takes its wave from a bus.", "see": ["bus", "keyed bus"] } ] })JSON";

Glossary theGlossary()
{
    std::ifstream file (std::string (STOPWRIGHT_ROOT) + "/Assets/Glossary.json");
    const std::string text { std::istreambuf_iterator<char> (file), {} };
    return Glossary::parse (text, "Glossary.json");
}

std::vector<std::string> namesOf (const std::vector<const GlossaryTerm*>& terms)
{
    std::vector<std::string> names;
    names.reserve (terms.size());
    for (const auto* term : terms)
        names.push_back (term->name);
    return names;
}

std::string lower (std::string text)
{
    for (char& letter : text)
        letter = static_cast<char> (std::tolower (static_cast<unsigned char> (letter)));
    return text;
}

/// The sentence that a glossary is refused with; empty when it is taken.
std::string refusal (const std::string& terms)
{
    try
    {
        Glossary::parse ("{ \"terms\": [" + terms + "] }", "G.json");
        return {};
    }
    catch (const DocumentError& error)
    {
        return error.what();
    }
}

using Names = std::vector<std::string>;

} // namespace

TEST (Glossary, FindsATermByAnyOfItsNames)
{
    const auto glossary = Glossary::parse (small, "small");
    ASSERT_NE (glossary.find ("Keyed Bus"), nullptr);
    EXPECT_EQ (glossary.find ("COLLECTOR"), glossary.find ("keyed bus"));
    EXPECT_EQ (glossary.find ("db(a)")->name, "A-weighting");
    EXPECT_EQ (glossary.find ("tap")->seeAlso, (Names { "bus", "keyed bus" }));
    EXPECT_EQ (glossary.find ("ta"), nullptr);
    EXPECT_EQ (glossary.find (""), nullptr);
}

TEST (Glossary, SearchPutsBeginningsBeforeTheMiddleOfANameAndThatBeforeTheText)
{
    const auto glossary = Glossary::parse (small, "small");
    EXPECT_EQ (namesOf (glossary.search ("Bus")), (Names { "bus", "keyed bus", "tap" }));
    EXPECT_EQ (namesOf (glossary.search ("conductor")), (Names { "bus" }));
    EXPECT_EQ (namesOf (glossary.search ("coll")), (Names { "keyed bus" }));
    EXPECT_TRUE (glossary.search ("zither").empty());
    EXPECT_EQ (glossary.search ("").size(), glossary.terms().size());
}

TEST (Glossary, GuessesAMisspeltTerm)
{
    const auto glossary = Glossary::parse (small, "small");
    EXPECT_EQ (glossary.closest ("keyd bus"), "keyed bus");
    EXPECT_EQ (glossary.closest ("tpa"), "tap");
    EXPECT_EQ (glossary.closest ("kaleidoscope"), "");
}

TEST (Glossary, RefusesWhatCannotBeReadThroughInASentenceThatNamesTheTerm)
{
    const auto expect = [] (const std::string& terms, const std::string& words)
    { EXPECT_NE (refusal (terms).find (words), std::string::npos) << refusal (terms); };
    const std::string bus = R"JSON({ "term": "bus", "text": "A conductor." })JSON";
    EXPECT_EQ (refusal (bus), "");
    expect (R"JSON({ "term": "bus" })JSON", "'bus' has no text");
    expect (bus + R"JSON(, { "term": "amp", "text": "x" })JSON", "'amp' stands after 'bus'");
    expect (bus + ", " + bus, "'bus' already");
    expect (bus + R"JSON(, { "term": "rail", "also": ["Bus"], "text": "x" })JSON", "'Bus' of the term 'rail'");
    expect (R"JSON({ "term": "bus", "text": "x", "see": ["tap"] })JSON", "refers to 'tap'");
    expect (R"JSON({ "term": "bus", "text": "x", "see": ["bus"] })JSON", "refers to 'bus'");
    EXPECT_NE (refusal (""), "");
}

TEST (Glossary, TheOneThatComesWithTheProgramsHoldsTheWordsOfTheTrade)
{
    const auto glossary = theGlossary();
    EXPECT_GE (glossary.terms().size(), 60U);
    for (const auto* wanted : { "tablet", "tap", "keyed bus", "footage", "mixing bus", "mixing resistor",
                                "virtual earth", "formant", "retired grounded", "compass", "divider",
                                "half-wave symmetry", "staircase", "outphasing", "winding", "headroom" })
        EXPECT_NE (glossary.find (wanted), nullptr) << wanted;
}

TEST (Glossary, TheOneThatComesWithTheProgramsIsWrittenInWholeSentences)
{
    const auto glossary = theGlossary();
    std::vector<std::string> reached;
    for (const auto& term : glossary.terms())
    {
        EXPECT_NE (std::isupper (static_cast<unsigned char> (term.text.front())), 0) << term.name;
        EXPECT_EQ (term.text.back(), '.') << term.name;
        EXPECT_LE (term.text.size(), 420U) << term.name << ": a few sentences, not a chapter";
        EXPECT_EQ (term.text.find ("  "), std::string::npos) << term.name;
        EXPECT_TRUE (std::ranges::is_sorted (term.seeAlso, {}, lower)) << term.name;
        reached.insert (reached.end(), term.seeAlso.begin(), term.seeAlso.end());
    }
    const auto isReached = [&] (const GlossaryTerm& term)
    { return std::ranges::find (reached, term.name) != reached.end(); };
    EXPECT_GE (std::ranges::count_if (glossary.terms(), isReached), 60) << "terms that others lead to";
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/DocumentLimits.h"
#include "Organ/JsonTree.h"
#include "Organ/SampleDocuments.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

std::string refusal (const std::string& text)
{
    return refusalOf ([&text] { parseJson (text, "f"); });
}

std::string repeated (const std::string& text, std::size_t count)
{
    std::string result;
    for (std::size_t i = 0; i < count; ++i)
        result += text;
    return result;
}

} // namespace

TEST (JsonParser, ReadsEveryTypeAndKeepsTheOrder)
{
    const auto tree =
        parseJson ("\xEF\xBB\xBF{\"z\": [1, -2, 2.5e3, true, null], \"a\": {\"\\u00b5\": \"x\\n\"}}\r\n", "f");
    EXPECT_EQ (tree.dump(), "{\"z\":[1,-2,2500.0,true,null],\"a\":{\"\xC2\xB5\":\"x\\n\"}}");
}

TEST (JsonParser, TellsTheLineOfAFault)
{
    EXPECT_EQ (refusal ("{\n\"a\": 1,\n\"b\": 2\n\"c\": 3\n}").substr (0, 10), "f: line 4:");
    EXPECT_EQ (refusal ("{\n\"a\": 12\n\n,,}").substr (0, 10), "f: line 4:");
    EXPECT_EQ (refusal ("{\n\"a\": 1,\n\"a\": 2}"),
               "f: line 3: the field \"a\" stands twice in the same object; keep one of them.");
    EXPECT_EQ (refusal ("{\n\n\"a\": 1e999\n}"),
               "f: line 3: a number is too large for this program; write one that a computer can hold.");
    EXPECT_EQ (refusal ("[1,\n2"), "f: line 2: this is not valid JSON: unexpected end of input; expected ']'.");
    EXPECT_EQ (refusal ("[1] 2"),
               "f: line 1: this is not valid JSON: unexpected number literal; expected end of input.");
}

TEST (JsonParser, RefusesWhatJsonDoesNotKnow)
{
    for (const auto* text : { "NaN", "[Infinity]", "[-Infinity]", "{'a': 1}", "[1,]", "[01]", "[.5]", "[1.]",
                              "// no\n[]", "[\"\\x\"]", "[\"\\ud800\"]", "[\"a\nb\"]", "nul", "\"" })
        EXPECT_NE (refusal (text), "no error") << text;
}

TEST (JsonParser, RefusesWhatIsNoText)
{
    EXPECT_EQ (refusal (""), "f: the document is empty; name another file, or put back a copy of it.");
    EXPECT_EQ (refusal ("\xEF\xBB\xBF \n"), "f: the document is empty; name another file, or put back a copy of it.");
    EXPECT_EQ (refusal ("[\n\"\xFF\"]"), "f: line 2: this is not UTF-8 text; save the document as UTF-8.");
    EXPECT_EQ (refusal (std::string ("\x7F"
                                     "ELF\0\0",
                                     6)),
               "f: line 1: this is binary data, not a text document.");
    EXPECT_EQ (refusal (std::string ("\xFF\xFE{\0", 4)), "f: the document is UTF-16 text; save it as UTF-8.");
}

TEST (JsonParser, BoundsTheDepth)
{
    const auto nested = [] (std::size_t depth) { return repeated ("[", depth) + repeated ("]", depth); };
    EXPECT_EQ (refusal (nested (DocumentLimits::depth)), "no error");
    EXPECT_EQ (refusal (nested (DocumentLimits::depth + 1)),
               "f: line 1: the document is nested deeper than 64 levels.");
    EXPECT_NE (refusal (repeated ("[", 4000000)), "no error");
    EXPECT_NE (refusal (repeated ("{\"a\":", 800000)), "no error");
}

TEST (JsonParser, BoundsTheSize)
{
    std::string most (DocumentLimits::bytes, 'x');
    most.front() = most.back() = '"';
    EXPECT_EQ (refusal (most), "no error");
    EXPECT_EQ (refusal (most + " "), "f: the document is larger than 4 MiB.");
    EXPECT_EQ (refusal ("[" + repeated ("0,", DocumentLimits::values) + "0]"),
               "f: line 1: the document holds more than 50000 values.");

    JsonTree fields = JsonTree::object();
    for (std::size_t i = 0; i <= DocumentLimits::fieldsPerObject; ++i)
        fields[std::to_string (i)] = 0;
    EXPECT_EQ (refusal (fields.dump()),
               "f: line 1: an object has more than 256 fields, which no document of this program has.");
}

TEST (JsonParser, DoesNotQuoteALongFault)
{
    EXPECT_LT (refusal (std::string ("[\"").append (1000000, 'x')).size(), 300U);
    EXPECT_LT (refusal (std::string ("[1").append (1000000, '9').append ("]")).size(), 300U);
}

TEST (JsonLayout, PutsWhatFitsOnOneLine)
{
    const auto tree = parseJson (R"({"a":{"b":[1,2],"c":"x"},"d":[],"e":{}})", "f");
    EXPECT_EQ (layOutJson (tree), "{\n  \"a\": { \"b\": [1, 2], \"c\": \"x\" },\n  \"d\": [],\n  \"e\": {}\n}\n");
    EXPECT_EQ (parseJson (layOutJson (tree), "f"), tree);
}

TEST (JsonLayout, BreaksWhatIsTooLong)
{
    JsonTree tree;
    tree["list"] = { std::string (70, 'x'), std::string (70, 'y') };
    const auto expected = std::string ("{\n  \"list\": [\n    \"")
                              .append (70, 'x')
                              .append ("\",\n    \"")
                              .append (70, 'y')
                              .append ("\"\n  ]\n}\n");
    EXPECT_EQ (layOutJson (tree), expected);
}

} // namespace stopwright

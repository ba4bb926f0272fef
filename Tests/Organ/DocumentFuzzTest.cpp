// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/CardDocument.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/MaskDocument.h"
#include "Organ/SampleDocuments.h"
#include "Organ/UnknownFields.h"
#include "Support/Random.h"

#include <gtest/gtest.h>

#include <array>

namespace stopwright
{

namespace
{

constexpr std::array<std::string_view, 40> pieces { "{",
                                                    "}",
                                                    "[",
                                                    "]",
                                                    ",",
                                                    ":",
                                                    "\"",
                                                    "\\",
                                                    "\\u0000",
                                                    "\\ud800",
                                                    "null",
                                                    "true",
                                                    "1e999",
                                                    "-1e-999",
                                                    "1e308",
                                                    "NaN",
                                                    "-0",
                                                    "0",
                                                    "\"0\"",
                                                    "1e-400",
                                                    "\xFF",
                                                    "\n",
                                                    "\t",
                                                    "\"4k7\"",
                                                    "\"\"",
                                                    "\"M\"",
                                                    "\"1e\"",
                                                    "[[[[[[",
                                                    "{\"a\":{\"a\":",
                                                    "//",
                                                    "\"R\"",
                                                    "\"C9\"",
                                                    "9999999999999999999999",
                                                    "\"diode\"",
                                                    "\"opamp\"",
                                                    "\"rounded\"",
                                                    "\"seconds\"",
                                                    "\"staircase\"",
                                                    "\"2 2/3\"",
                                                    "\xEF\xBB\xBF" };

/// Takes a document apart in one place: a byte, a run of bytes, a token or a whole field.
void mutate (std::string& text, Random& random)
{
    const auto place = [&] { return static_cast<std::size_t> (random.integer (0, static_cast<int> (text.size()))); };
    const auto at = place();
    const auto run = static_cast<std::size_t> (random.integer (1, 40));
    const auto piece = pieces[static_cast<std::size_t> (random.integer (0, static_cast<int> (pieces.size()) - 1))];
    switch (random.integer (0, 6))
    {
        case 0:
            text.insert (at, 1, static_cast<char> (random.integer (0, 255)));
            break;
        case 1:
            text.erase (at, run);
            break;
        case 2:
            text.insert (at, piece);
            break;
        case 3:
            text.replace (at, run, piece);
            break;
        case 4:
            text.insert (place(), text.substr (at, run * 5));
            break;
        case 5:
            text.resize (at);
            break;
        default:
        {
            // A whole scalar, so that the text stays JSON and what reads its fields is reached.
            const auto colon = text.find (": ", at);
            const auto end = colon == std::string::npos ? colon : text.find_first_of (",}]\n", colon);
            if (end != std::string::npos)
                text.replace (colon + 2, end - colon - 2, piece);
        }
    }
}

/// What is read may be refused, but then by a sentence; what is accepted must come back from its own text.
bool readsOrRefuses (const std::string& text, const std::string& kind)
{
    try
    {
        const auto write = [&kind] (const std::string& from)
        {
            return kind == "card"   ? cardText (parseCard (from, "f"))
                   : kind == "mask" ? maskText (parseMask (from, "f"))
                                    : instrumentText (parseInstrument (from, "f"));
        };
        const auto first = write (text);
        EXPECT_EQ (write (first), first) << text;
        listUnknownFields (kind == "card"   ? parseCard (text, "f").unknownFields
                           : kind == "mask" ? parseMask (text, "f").unknownFields
                                            : parseInstrument (text, "f").unknownFields);
        return true;
    }
    catch (const DocumentError& error)
    {
        const std::string sentence = error.what();
        EXPECT_TRUE (sentence.ends_with (".") || sentence.ends_with ("?")) << sentence;
        EXPECT_LT (sentence.size(), 500U) << sentence;
        EXPECT_EQ (sentence.find_first_of ("\n\r\x1B"), std::string::npos) << sentence;
        return false;
    }
}

void fuzz (const std::string& kind, int rounds, std::uint64_t seed)
{
    Random random (seed);
    const auto files = sampleDocuments ("good", kind);
    int accepted = 0;
    for (int round = 0; round < rounds; ++round)
    {
        auto text = textOf (files[static_cast<std::size_t> (random.integer (0, static_cast<int> (files.size()) - 1))]);
        for (int count = random.integer (1, 3); count > 0; --count)
            mutate (text, random);
        accepted += readsOrRefuses (text, kind) ? 1 : 0;
    }
    // Both ways must have been walked, or the mutations are too wild or too tame.
    EXPECT_GT (accepted, rounds / 100);
    EXPECT_LT (accepted, rounds / 2);
}

} // namespace

TEST (DocumentFuzz, CardsAreReadOrRefused)
{
    fuzz ("card", 12000, 20240601);
}

TEST (DocumentFuzz, InstrumentsAreReadOrRefused)
{
    fuzz ("instrument", 6000, 20240602);
}

TEST (DocumentFuzz, MasksAreReadOrRefused)
{
    fuzz ("mask", 6000, 20240604);
}

TEST (DocumentFuzz, RubbishIsRefused)
{
    Random random (20240603);
    for (int round = 0; round < 2000; ++round)
    {
        std::string text (static_cast<std::size_t> (random.integer (0, 300)), '\0');
        for (auto& c : text)
            c = static_cast<char> (random.integer (0, 255));
        EXPECT_FALSE (readsOrRefuses (text, "card"));
    }
}

} // namespace stopwright

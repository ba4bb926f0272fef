// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/MaskDocument.h"

#include "Organ/InstrumentDocument.h"
#include "Organ/SampleDocuments.h"
#include "Organ/SchemaChecker.h"
#include "Organ/UnknownFields.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

std::filesystem::path sample (const std::string& name)
{
    return STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/mask-" + name + ".json";
}

std::vector<std::filesystem::path> library()
{
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator (STOPWRIGHT_ROOT "/Presets/Masks"))
        files.push_back (entry.path());
    return files;
}

std::string refusal (const std::string& from, const std::string& to)
{
    auto text = textOf (sample ("whole"));
    const auto at = text.find (from);
    EXPECT_NE (at, std::string::npos) << from;
    text.replace (at, from.size(), to);
    return refusalOf ([&text] { parseMask (text, "mask.json"); });
}

} // namespace

TEST (MaskDocument, ReadsEverything)
{
    const auto mask = readMask (sample ("whole"));
    EXPECT_EQ (mask.name, "All of it");
    EXPECT_EQ (mask.unison, Footage::parse ("2 2/3"));
    EXPECT_EQ (mask.reference, MaskReference::first);
    EXPECT_EQ (mask.lowestKey, 48);
    EXPECT_EQ (mask.highestKey, 84);
    EXPECT_EQ (mask.certainty, Certainty::published);
    EXPECT_EQ (mask.source, "A. Author, A Book, 1999");
    ASSERT_EQ (mask.harmonics.size(), 4U);
    EXPECT_EQ (mask.harmonics[1].wish.levelDb, -12.5);
    EXPECT_EQ (mask.harmonics[1].wish.highestKey, 59);
    EXPECT_EQ (mask.harmonics[1].wish.certainty, Certainty::measured);
    EXPECT_TRUE (mask.harmonics[3].atMost);
    ASSERT_EQ (mask.bands.size(), 2U);
    EXPECT_EQ (mask.bands[0].centreHz, 1400.0);
    EXPECT_EQ (mask.bands[0].widthHz, 300.0);
    EXPECT_TRUE (mask.isFor (84));
    EXPECT_FALSE (mask.isFor (85));
    EXPECT_TRUE (TargetMask::entryIsFor (mask.harmonics[1].wish, 59));
    EXPECT_FALSE (TargetMask::entryIsFor (mask.harmonics[1].wish, 60));
}

TEST (MaskDocument, LevelsReTheStrongest)
{
    TargetMask mask;
    mask.reference = MaskReference::first;
    mask.harmonics = { { 1, false, { 0.0, 6.0 } }, { 2, false, { 4.0, 6.0 } }, { 3, true, { 20.0, 6.0 } } };
    EXPECT_EQ (mask.levelReStrongest (mask.harmonics[0]), -4.0) << "an upper bound is no strongest";
    EXPECT_EQ (mask.levelReStrongest (mask.harmonics[1]), 0.0);
    mask.reference = MaskReference::strongest;
    EXPECT_EQ (mask.levelReStrongest (mask.harmonics[0]), 0.0);
}

TEST (MaskDocument, ComesBackFromItsText)
{
    for (const std::string name : { "whole", "least", "unknown-fields", "unicode", "bands-only" })
    {
        const auto text = maskText (readMask (sample (name)));
        EXPECT_EQ (maskText (parseMask (text, "again")), text) << name;
    }
    const TemporaryFolder folder;
    writeMask (readMask (sample ("whole")), folder.file ("a.json"));
    EXPECT_EQ (textOf (folder.file ("a.json")), maskText (readMask (sample ("whole"))));
    EXPECT_EQ (documentKind (folder.file ("a.json")), "mask");
}

TEST (MaskDocument, KeepsWhatItDoesNotKnow)
{
    const auto mask = readMask (sample ("unknown-fields"));
    std::vector<std::string> sentences;
    for (const auto& unknown : listUnknownFields (mask.unknownFields))
        sentences.push_back (unknown.sentence);
    EXPECT_EQ (sentences, (std::vector<std::string> {
                              "band second: the field \"hat\" is unknown; it is kept as it is.",
                              "harmonic 1: the field \"tolerence\" is unknown; did you mean \"toleranceDb\"?",
                              "harmonic 1: the field \"colour\" is unknown; it is kept as it is.",
                              "the field \"drawnBy\" is unknown; it is kept as it is." }));
    const auto again = Json::parse (maskText (mask));
    EXPECT_EQ (again["drawnBy"], "me");
    EXPECT_EQ (again["harmonics"][0]["colour"], "red");
    EXPECT_EQ (again["bands"][0]["hat"], "blue");
}

TEST (MaskDocument, RefusesInOneSentence)
{
    EXPECT_NE (refusal (R"("A. Author, A Book, 1999")", R"("")").find ("name the work"), std::string::npos);
    EXPECT_NE (
        refusal (R"("lowestKey": "C3")", R"("lowestKey": "C7")").find ("/lowestKey: the lowest key C7 lies above"),
        std::string::npos);
    EXPECT_NE (refusal (R"("highestKey": "B3")", R"("highestKey": "C4")").find ("harmonic 2 stands twice"),
               std::string::npos);
    EXPECT_NE (refusal (R"("measured")", R"("mesured")").find ("did you mean 'measured'?"), std::string::npos);
    EXPECT_NE (refusal (R"("mask")", R"("card")").find ("this is a card, but a mask is wanted"), std::string::npos);
}

/// What a schema cannot know: numbers that go with other numbers.
TEST (MaskDocument, HasRulesThatASchemaCannotTell)
{
    const SchemaChecker schema ("mask");
    auto document = Json::parse (textOf (sample ("whole")));
    document["lowestKey"] = "C7";
    EXPECT_TRUE (schema.accepts (document));
    EXPECT_NE (refusalOf ([&] { parseMask (document.dump(), "m"); }), "no error");
}

TEST (MaskLibrary, KeepsToTheSchemaAndSaysWhoSaysSo)
{
    const SchemaChecker schema ("mask");
    const auto files = library();
    EXPECT_EQ (files.size(), 27U);
    for (const auto& file : files)
    {
        EXPECT_TRUE (schema.accepts (Json::parse (textOf (file)))) << file;
        const auto mask = readMask (file);
        EXPECT_FALSE (mask.name.empty()) << file;
        EXPECT_TRUE (listUnknownFields (mask.unknownFields).empty()) << file;
        EXPECT_NE (mask.certainty, Certainty::measured) << file;
        EXPECT_EQ (mask.certainty == Certainty::published, ! mask.source.empty()) << file;
        // Starting masks are common practice, no source, and 6 dB either way; formants have bands.
        for (const auto& harmonic : mask.harmonics)
            EXPECT_EQ (harmonic.wish.toleranceDb, 6.0) << file;
        EXPECT_EQ (mask.harmonics.empty(), ! mask.bands.empty()) << file;
        EXPECT_TRUE (mask.bands.empty() || mask.note.find ("common practice, no source") != std::string::npos) << file;
        EXPECT_FALSE (mask.bands.empty() && mask.certainty != Certainty::commonPractice) << file;
    }
}

} // namespace stopwright

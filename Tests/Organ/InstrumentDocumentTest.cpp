// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/InstrumentDocument.h"

#include "Organ/SampleDocuments.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

std::string sample (const std::string& name)
{
    return textOf (STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/" + name + ".json");
}

std::string refusal (const std::string& from, const std::string& to)
{
    auto text = sample ("instrument-organ");
    const auto at = text.find (from);
    EXPECT_NE (at, std::string::npos) << from;
    text.replace (at, from.size(), to);
    return refusalOf ([&text] { parseInstrument (text, "organ.json"); });
}

} // namespace

TEST (InstrumentDocument, ReadsEverything)
{
    const auto organ = parseInstrument (sample ("instrument-organ"), "organ.json");
    EXPECT_EQ (organ.name, "Practice organ");
    EXPECT_EQ (organ.tuning.kind, TuningKind::topOctave);
    EXPECT_EQ (organ.tuning.clockHz, 2000240.0);
    EXPECT_EQ (organ.tuning.divisors[0], 478);
    EXPECT_EQ (organ.tuning.divisors[11], 253);
    EXPECT_EQ (organ.tuning.highestKey, 120);
    EXPECT_EQ (organ.tuning.top, TopBehaviour::breakBack);
    EXPECT_EQ (organ.tuning.mutations, MutationSource::borrowed);
    EXPECT_EQ (organ.keyer, (KeyerSettings { KeyerShape::rc, 0.0047, 0.03, -70.0 }));
    ASSERT_EQ (organ.divisions.size(), 3U);
    EXPECT_EQ (organ.divisions[2].highestKey, 65);
    ASSERT_EQ (organ.keyedBuses.size(), 3U);
    EXPECT_EQ (organ.keyedBuses[1].wave.kind, WaveKind::staircase);
    EXPECT_EQ (organ.keyedBuses[2].footage, Footage::parse ("2 2/3"));
    ASSERT_EQ (organ.stops.size(), 2U);
    EXPECT_EQ (organ.stops[0].cardFile, "Cards/StoppedFlute8.json");
    EXPECT_TRUE (organ.stops[1].proposed);
}

TEST (InstrumentDocument, FillsInWhatIsUsual)
{
    const auto organ = parseInstrument (sample ("instrument-least"), "least.json");
    EXPECT_EQ (organ.tuning.referenceHz, 440.0);
    EXPECT_EQ (organ.tuning.highestKey, 120);
    EXPECT_EQ (organ.tuning.top, TopBehaviour::silent);
    EXPECT_EQ (organ.keyer, KeyerSettings());
    EXPECT_EQ (organ.divisions[0].lowestKey, 41);
}

TEST (InstrumentDocument, TextIsStableAfterOneReading)
{
    for (const auto& file : sampleDocuments ("good", "instrument"))
    {
        const auto organ = readInstrument (file);
        const auto text = instrumentText (organ);
        EXPECT_EQ (instrumentText (parseInstrument (text, "again")), text) << file;
        EXPECT_EQ (parseInstrument (text, "again").unknownFields, organ.unknownFields) << file;
    }
}

TEST (InstrumentDocument, RefusesWhatASchemaCannotTell)
{
    EXPECT_EQ (
        refusal ("\"division\": \"Upper\"", "\"division\": \"Uper\""),
        "organ.json: /stops/0/division: stop \"Stopped flute 8\": there is no division \"Uper\" among the divisions.");
    EXPECT_NE (refusal ("\"highestKey\": \"C7\"", "\"highestKey\": \"C1\"").find ("below the lowest"),
               std::string::npos);
    EXPECT_NE (refusal ("\"name\": \"Lower\"", "\"name\": \"Upper\"").find ("stands twice"), std::string::npos);
    EXPECT_NE (refusal ("\"name\": \"B8\"", "\"name\": \"B16\"").find ("stands twice"), std::string::npos);
    EXPECT_NE (refusal ("\"highestGenerator\": \"C9\"", "\"highestGenerator\": \"C2\"").find ("/tuning: "),
               std::string::npos);
}

TEST (InstrumentDocument, TellsTheKindOfAFile)
{
    const TemporaryFolder folder;
    EXPECT_EQ (documentKind (folder.write ("a", sample ("instrument-organ"))), "instrument");
    EXPECT_EQ (documentKind (folder.write ("b", sample ("card-reed"))), "card");
    EXPECT_NE (refusalOf ([&] { documentKind (folder.write ("c", "{\"stopwright\": 1, \"kind\": \"crad\"}")); })
                   .find ("did you mean 'card'"),
               std::string::npos);
    EXPECT_NE (refusalOf ([&] { documentKind (folder.write ("d", "{}")); }).find ("not a Stopwright document"),
               std::string::npos);
    EXPECT_NE (refusalOf ([&] { readInstrument (folder.file ("b")); }).find ("an instrument is wanted"),
               std::string::npos);
}

TEST (InstrumentDocument, WritesAndReadsFiles)
{
    const TemporaryFolder folder;
    const auto organ = parseInstrument (sample ("instrument-tempered"), "t.json");
    writeInstrument (organ, folder.file ("a.json"));
    EXPECT_EQ (instrumentText (readInstrument (folder.file ("a.json"))), instrumentText (organ));
}

} // namespace stopwright

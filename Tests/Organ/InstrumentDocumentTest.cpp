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

TEST (InstrumentDocument, ReadsBusesAndContacts)
{
    const auto organ = parseInstrument (sample ("instrument-whole"), "organ.json");
    EXPECT_EQ (organ.divisions[2].midiChannel, 16);
    EXPECT_FALSE (organ.keyedBuses[0].collectorOhms);
    EXPECT_FALSE (organ.keyedBuses[0].keyer);
    EXPECT_EQ (organ.keyedBuses[1].collectorOhms, 100e3);
    EXPECT_EQ (organ.keyedBuses[1].loadOhms, 4700.0);
    EXPECT_EQ (organ.keyedBuses[1].keyer, (KeyerSettings { KeyerShape::rc, 0.0047, 0.05, -60.0 }));
    EXPECT_EQ (organ.contacts.order, (std::vector<std::string> { "S8", "S16" }));
    EXPECT_EQ (organ.contacts.staggerSeconds, 0.0015);

    ASSERT_EQ (organ.mixingBuses.size(), 3U);
    EXPECT_EQ (organ.mixingBuses[0].kind, BusKind::virtualEarth);
    EXPECT_EQ (organ.mixingBuses[0].feedbackOhms, 47e3);
    EXPECT_EQ (organ.mixingBuses[0].gainBandwidthHz, 1e6);
    EXPECT_EQ (organ.mixingBuses[0].rails, (SupplyRails { -6.0, 6.0 }));
    EXPECT_EQ (organ.mixingBuses[1].kind, BusKind::passive);
    EXPECT_EQ (organ.mixingBuses[1].loadOhms, 100e3);
    EXPECT_EQ (organ.mixingBuses[1].loadFarads, 1e-9);
}

TEST (InstrumentDocument, ReadsPreampsAndOutlets)
{
    const auto organ = parseInstrument (sample ("instrument-whole"), "organ.json");
    ASSERT_EQ (organ.preamps.size(), 3U);
    EXPECT_EQ (organ.preamps[0].bus, "Flutes");
    EXPECT_EQ (organ.preamps[0].outlet, "Tremulant");
    const auto& stages = organ.preamps[0].stages;
    ASSERT_EQ (stages.size(), 2U);
    EXPECT_EQ (stages[0].coupling, (Coupling { 1e-6, 47e3 }));
    EXPECT_EQ (stages[0].gain, -12.5);
    EXPECT_EQ (stages[0].gainBandwidthHz, 3e6);
    EXPECT_EQ (stages[0].rails, (SupplyRails { -6.0, 5.5 }));
    EXPECT_EQ (stages[1].kind, StageKind::follower);
    EXPECT_EQ (stages[1].emitterAmps, 0.7e-3);
    EXPECT_EQ (stages[1].emitterOhms, 10e3);
    EXPECT_EQ (stages[1].loadOhms, 4700.0);
    EXPECT_EQ (stages[1].rails, SupplyRails());
    EXPECT_EQ (organ.preamps[1].stages[0].kind, StageKind::circuit);
    EXPECT_EQ (organ.preamps[1].stages[0].cardFile, "Cards/Tone.json");
    EXPECT_TRUE (organ.preamps[2].stages.empty());

    ASSERT_EQ (organ.outlets.size(), 3U);
    EXPECT_FALSE (organ.outlets[0].swell);
    EXPECT_EQ (organ.outlets[1].tremulant, (TremulantSettings { 6.5, 0.25 }));
    EXPECT_FALSE (organ.outlets[1].isOn);
    EXPECT_EQ (organ.outlets[1].swellFloorDb, -36.0);
    EXPECT_EQ (organ.outlets[2].kind, OutletKind::rotary);
    EXPECT_EQ (organ.outlets[2].rotary, RotarySettings());
}

TEST (InstrumentDocument, ReadsTablets)
{
    const auto organ = parseInstrument (sample ("instrument-whole"), "organ.json");
    ASSERT_EQ (organ.couplers.size(), 2U);
    EXPECT_EQ (organ.couplers[0].from, "Lower");
    EXPECT_EQ (organ.couplers[0].to, "Upper");
    EXPECT_TRUE (organ.couplers[0].drawn);
    EXPECT_EQ (organ.couplers[1].octaves, 1);
    ASSERT_EQ (organ.stops.size(), 3U);
    EXPECT_EQ (organ.stops[0].bus, "Flutes");
    EXPECT_EQ (organ.stops[0].mixingOhms, 56e3);
    EXPECT_EQ (organ.stops[0].polarity, -1);
    EXPECT_EQ (organ.stops[0].whenRetired, WhenRetired::open);
    EXPECT_TRUE (organ.stops[0].drawn);
    EXPECT_EQ (organ.stops[1].mixingOhms, 47e3);
    EXPECT_EQ (organ.stops[1].whenRetired, WhenRetired::grounded);
    EXPECT_FALSE (organ.stops[1].drawn);
}

TEST (InstrumentDocument, KeepsFieldsOfOtherKindsAndPrograms)
{
    const auto organ = parseInstrument (sample ("instrument-foreign-fields"), "organ.json");
    const auto text = instrumentText (organ);
    for (const std::string kept :
         { R"("make": "wood")", R"("loadOhms": "10k")", R"("sustain": 2)", R"("material": "gold")",
           R"("feedbackOhms": "not looked at")", R"("colour": "white")", R"("loadOhms": -1)", R"("box": 3)",
           R"("emitterAmps": 0)", R"("make": "film")", R"("tremulant": { "rateHz": 6 })", R"("brake": true)",
           R"("baffle": 1)", R"("baffle": 2)", R"("tremulant": 7)", R"("lamp": true)", R"("colour": "red")",
           R"("watts": 2)" })
        EXPECT_NE (text.find (kept), std::string::npos) << "no " << kept << " in: " << text;
}

TEST (InstrumentDocument, LeavesOutWhatAnInstrumentDoesNotHave)
{
    const auto text = instrumentText (parseInstrument (sample ("instrument-least"), "least.json"));
    for (const std::string field : { "contacts", "mixingBuses", "preamps", "outlets", "couplers", "midiChannel" })
        EXPECT_EQ (text.find (field), std::string::npos) << field;
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
    EXPECT_EQ (refusal ("\"division\": \"Upper\"", "\"division\": \"Uper\""),
               "organ.json: /stops/0/division: stop \"Stopped flute 8\": there is no division \"Uper\" among the "
               "divisions; did you mean \"Upper\"?");
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

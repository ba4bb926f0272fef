// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/InstrumentCards.h"

#include "Organ/SampleDocuments.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

std::string cardText (const std::string& name, int taps)
{
    std::string list;
    for (int i = 0; i < taps; ++i)
        list += std::string (i == 0 ? "" : ",") + R"({"name":"W)" + std::to_string (i)
                + R"(","wave":"square","node":"in"})";
    return R"({"stopwright":1,"kind":"card","name":")" + name + R"(","taps":[)" + list
           + R"(],"parts":[{"name":"R1","kind":"resistor","nodes":["in","0"],"value":"10k"}],"output":"in"})";
}

StopTablet stopWith (const std::string& name, const std::string& cardFile)
{
    StopTablet stop;
    stop.name = name;
    stop.cardFile = cardFile;
    return stop;
}

PreampStage circuitWith (const std::string& name, const std::string& cardFile)
{
    PreampStage stage;
    stage.name = name;
    stage.kind = StageKind::circuit;
    stage.cardFile = cardFile;
    return stage;
}

/// A folder with the instrument's document, cards beside it and in a folder of their own, and one card outside.
class InstrumentCardsTest : public testing::Test
{
protected:
    InstrumentCardsTest()
    {
        std::filesystem::create_directories (folder_.file ("Organ/Cards"));
        folder_.write ("Outside.json", cardText ("Outside", 1));
        folder_.write ("Organ/Flute.json", cardText ("Flute", 1));
        folder_.write ("Organ/Cards/Reed.json", cardText ("Reed", 2));
        folder_.write ("Organ/Broken.json", "{");
    }

    std::string errorOf (const StopTablet& stop) const
    {
        Instrument organ;
        organ.stops = { stop };
        const auto cards = findInstrumentCards (organ, document_);
        return cards.errors.empty() ? "no error" : cards.errors.front();
    }

    TemporaryFolder folder_;
    std::filesystem::path document_ = folder_.file ("Organ/Organ.json");
};

} // namespace

TEST_F (InstrumentCardsTest, StandInTheOrderOfTheInstrument)
{
    Instrument organ;
    organ.stops = { stopWith ("A", "Flute.json"), stopWith ("Blank", ""), stopWith ("B", "Cards/Reed.json") };
    organ.preamps.resize (2);
    organ.preamps[1].stages = { PreampStage(), circuitWith ("Tone", "Flute.json") };

    const auto cards = instrumentCards (organ, document_);
    ASSERT_EQ (cards.ofStops.size(), 3U);
    EXPECT_EQ (cards.ofStops[0].value().name, "Flute");
    EXPECT_FALSE (cards.ofStops[1]);
    EXPECT_EQ (cards.ofStops[2].value().name, "Reed");
    ASSERT_EQ (cards.ofStages.size(), 2U);
    EXPECT_TRUE (cards.ofStages[0].empty());
    ASSERT_EQ (cards.ofStages[1].size(), 2U);
    EXPECT_FALSE (cards.ofStages[1][0]);
    EXPECT_EQ (cards.ofStages[1][1].value().name, "Flute");
    EXPECT_TRUE (cards.errors.empty());
}

TEST_F (InstrumentCardsTest, StayInTheFolderOfTheDocument)
{
    EXPECT_EQ (errorOf (stopWith ("A", "Cards/../Flute.json")), "no error");
    EXPECT_EQ (errorOf (stopWith ("A", "./Cards//Reed.json")), "no error");
    EXPECT_EQ (
        errorOf (stopWith ("A", "../Outside.json")),
        "The card \"../Outside.json\" lies outside the folder of Organ.json; copy it into that folder and name it "
        "from there. (the card of tablet A)");
    for (const auto& path : { std::string ("Cards/../../Outside.json"), std::string (".."),
                              std::string ("../Organ/Flute.json"), folder_.file ("Organ/Flute.json").string() })
        EXPECT_NE (errorOf (stopWith ("A", path)).find ("outside the folder"), std::string::npos) << path;
}

TEST_F (InstrumentCardsTest, ThatCannotBeReadNameTheirTablet)
{
    EXPECT_NE (errorOf (stopWith ("Tuba 8", "Tuba.json")).find ("Tuba.json: the file cannot be found"),
               std::string::npos);
    EXPECT_TRUE (errorOf (stopWith ("Tuba 8", "Broken.json")).ends_with ("(the card of tablet \"Tuba 8\")"));
    EXPECT_NE (errorOf (stopWith ("Tuba 8", "Cards")).find ("directory"), std::string::npos);
}

TEST_F (InstrumentCardsTest, OfAStageHaveOneTap)
{
    Instrument organ;
    organ.stops = { stopWith ("B", "Cards/Reed.json"), stopWith ("C", "Broken.json") };
    organ.preamps.resize (1);
    organ.preamps[0].name = "Main preamp";
    organ.preamps[0].stages = { circuitWith ("Tone", "Cards/Reed.json"), circuitWith ("Mute", "Broken.json") };
    const auto cards = findInstrumentCards (organ, document_);
    EXPECT_TRUE (cards.ofStops[0]) << "a stop may have several taps";
    EXPECT_FALSE (cards.ofStages[0][0]);
    ASSERT_EQ (cards.errors.size(), 3U) << "all are told, not the first alone";
    EXPECT_EQ (cards.errors[1],
               "\"Cards/Reed.json\" has 2 taps, but a stage has one input; name a card with exactly one "
               "tap. (the card of stage Tone in preamp \"Main preamp\")");
    EXPECT_TRUE (cards.errors[2].ends_with ("(the card of stage Mute in preamp \"Main preamp\")")) << cards.errors[2];
    EXPECT_THROW (instrumentCards (organ, document_), Error);
}

} // namespace stopwright

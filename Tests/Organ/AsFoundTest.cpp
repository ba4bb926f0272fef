// SPDX-License-Identifier: GPL-3.0-or-later
//
// What was otherwise before the work, in the documents of cards and instruments.
#include "Organ/AsFound.h"

#include "Organ/CardDocument.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/SampleDocuments.h"
#include "Organ/UnknownFields.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

std::string sample (const std::string& name)
{
    return textOf (STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/" + name + ".json");
}

} // namespace

TEST (AsFound, OfAStopIsRead)
{
    const auto organ = parseInstrument (sample ("instrument-whole"), "o");
    ASSERT_TRUE (organ.stops[0].asFound);
    const auto& found = *organ.stops[0].asFound;
    EXPECT_EQ (found.division, "Lower");
    EXPECT_EQ (found.cardFile, "");
    EXPECT_EQ (found.bus, "Reeds");
    EXPECT_EQ (found.mixingOhms, 47e3);
    EXPECT_EQ (found.polarity, 1);
    EXPECT_EQ (found.whenRetired, WhenRetired::grounded);
    EXPECT_EQ (found.note, (AlterationNote { "2026-11-27", "Flutes belong together." }));
    EXPECT_FALSE (organ.stops[1].asFound);
}

TEST (AsFound, OfAStopKeepsNamesThatAreGone)
{
    const auto organ = parseInstrument (sample ("instrument-as-found"), "o");
    EXPECT_EQ (organ.stops[1].asFound->bus, "Scrapped");
    EXPECT_EQ (organ.stops[1].asFound->division, "Echo");
    EXPECT_FALSE (organ.stops[1].asFound->mixingOhms);
}

TEST (AsFound, OfATapIsRead)
{
    const auto card = parseCard (sample ("card-as-found"), "c");
    ASSERT_TRUE (card.taps[0].asFound);
    const auto& found = *card.taps[0].asFound;
    ASSERT_TRUE (found.source);
    EXPECT_EQ (found.source->wave.kind, WaveKind::staircase);
    EXPECT_EQ (found.source->footage, Footage::parse ("4"));
    EXPECT_EQ (found.source->voltsPeakToPeak, 0.5);
    EXPECT_EQ (found.source->sourceOhms, 2200.0);
    EXPECT_EQ (found.node, "t");
    EXPECT_EQ (found.polarity, -1);
    EXPECT_EQ (found.note.date, "2026-02-28");
    EXPECT_FALSE (card.taps[1].asFound->source);
}

TEST (AsFound, KeepsFieldsItDoesNotKnow)
{
    const auto card = parseCard (sample ("card-as-found"), "c");
    EXPECT_EQ (card.unknownFields.at ("tapAsFound:W1"), R"({"duty":"of no use here","wire":"blue"})");
    EXPECT_EQ (card.unknownFields.at ("tapAsFound:W2"), R"({"footage":[8],"ranks":99})");
    const auto organ = parseInstrument (sample ("instrument-as-found"), "o");
    EXPECT_EQ (organ.unknownFields.at ("stopAsFound:C"), R"({"by":[1,2]})");
    EXPECT_EQ (listUnknownFields (organ.unknownFields).front().sentence,
               "as found of stop A: the field \"clip\" is unknown; it is kept as it is.");
    for (const auto& text : { cardText (card), instrumentText (organ) })
    {
        EXPECT_EQ (text.find ("asFound\": {}"), std::string::npos);
        EXPECT_NE (text.find (text == cardText (card) ? "\"wire\": \"blue\"" : "\"by\": [1, 2]"), std::string::npos);
    }
    EXPECT_EQ (cardText (parseCard (cardText (card), "c")), cardText (card));
    EXPECT_EQ (instrumentText (parseInstrument (instrumentText (organ), "o")), instrumentText (organ));
}

TEST (AsFound, StandsLastInWhatItIsOf)
{
    auto organ = parseInstrument (sample ("instrument-as-found"), "o");
    organ.stops.resize (1);
    organ.stops[0].drawn = true;
    const auto text = instrumentText (organ);
    EXPECT_LT (text.find ("\"drawn\": true"), text.find (R"("asFound": { "bus": "", "clip": "green" })")) << text;
    EXPECT_NE (text.find ("asFound"), std::string::npos);
}

TEST (AsFound, SaysWhatADateIs)
{
    auto text = sample ("instrument-whole");
    text.replace (text.find ("2026-11-27"), 10, "27.11.2026");
    EXPECT_EQ (
        refusalOf ([&text] { parseInstrument (text, "o"); }),
        "o: /stops/0/asFound/date: stop \"Flute 8\": the date \"27.11.2026\" is none; write year, month and day as "
        "\"2026-11-27\".");
}

} // namespace stopwright

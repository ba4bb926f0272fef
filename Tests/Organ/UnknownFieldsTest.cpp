// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/UnknownFields.h"

#include "Organ/CardDocument.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/SampleDocuments.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stopwright
{

TEST (UnknownFields, SayWhatWasProbablyMeant)
{
    const auto card = readCard (STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/card-unknown-fields.json");
    std::vector<std::string> sentences;
    for (const auto& unknown : listUnknownFields (card.unknownFields))
        sentences.push_back (unknown.sentence);
    EXPECT_EQ (sentences,
               (std::vector<std::string> { "the field \"drawnBy\" is unknown; it is kept as it is.",
                                           "part C1: the field \"make\" is unknown; it is kept as it is.",
                                           "part R1: the field \"tolerence\" is unknown; did you mean \"tolerance\"?",
                                           "tap W1: the field \"colour\" is unknown; it is kept as it is.",
                                           "tap W1: the field \"duty\" has no meaning here; it is kept as it is." }));
}

TEST (UnknownFields, AreNoneInADocumentOfTheBook)
{
    EXPECT_TRUE (
        listUnknownFields (readCard (STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/card-parts.json").unknownFields)
            .empty());
}

TEST (UnknownFields, NameObjectsWithoutANameByTheirField)
{
    const auto organ = readInstrument (STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/instrument-tempered.json");
    std::vector<std::string> places;
    for (const auto& unknown : listUnknownFields (organ.unknownFields))
        places.push_back (unknown.place + "/" + unknown.field);
    EXPECT_EQ (places, (std::vector<std::string> { "/pistons", "stop \"Stopped flute 8\"/lamp", "tuning/temper" }));
}

TEST (UnknownFields, NameWhatStandsInsideAnotherThing)
{
    const auto organ = readInstrument (STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/instrument-foreign-fields.json");
    std::vector<std::string> sentences;
    for (const auto& unknown : listUnknownFields (organ.unknownFields))
        sentences.push_back (unknown.sentence);
    for (const std::string expected :
         { "contacts: the field \"material\" is unknown; it is kept as it is.",
           "coupling of P/Gain: the field \"make\" is unknown; it is kept as it is.",
           "horn of Turn: the field \"baffle\" is unknown; it is kept as it is.",
           "keyed bus S8: the field \"loadOhms\" has no meaning here; it is kept as it is.",
           "keyer of S8: the field \"sustain\" is unknown; it is kept as it is.",
           "mixing bus Mix: the field \"feedbackOhms\" has no meaning here; it is kept as it is.",
           "outlet Out: the field \"tremulant\" has no meaning here; it is kept as it is.",
           "rotary of Turn: the field \"brake\" is unknown; it is kept as it is.",
           "stage P/Gain: the field \"card\" has no meaning here; it is kept as it is.",
           "tremulant of Shake: the field \"lamp\" is unknown; it is kept as it is." })
        EXPECT_NE (std::find (sentences.begin(), sentences.end(), expected), sentences.end()) << expected;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/RailEdit.h"

#include "Organ/CardDocument.h"
#include "Organ/ErrorSentence.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/TestOrgan.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

const std::string krummhorn = "Krummhorn 8";

Instrument larkfield()
{
    return test::larkfield().instrument;
}

const StopTablet& tabletOf (const Instrument& instrument, const std::string& name = krummhorn)
{
    return *std::ranges::find (instrument.stops, name, &StopTablet::name);
}

Card krummhornCard()
{
    return readCard (STOPWRIGHT_ROOT "/Presets/Krummhorn8.json");
}

} // namespace

TEST (RailEdit, MovesAStopAndNotesWhereItWas)
{
    const auto moved = moveStopToBus (larkfield(), krummhorn, "Lower chorus");
    EXPECT_EQ (tabletOf (moved).bus, "Lower chorus");
    ASSERT_TRUE (tabletOf (moved).asFound);
    EXPECT_EQ (tabletOf (moved).asFound->bus, "Upper reeds");
    EXPECT_FALSE (tabletOf (moved).asFound->mixingOhms);

    // The second move does not change what was found.
    const auto again = moveStopToBus (moved, krummhorn, "Upper flutes");
    EXPECT_EQ (tabletOf (again).asFound->bus, "Upper reeds");
    EXPECT_EQ (instrumentText (parseInstrument (instrumentText (again), "o")), instrumentText (again));

    const auto back = moveStopToBus (again, krummhorn, "Upper reeds");
    EXPECT_FALSE (tabletOf (back).asFound);
    EXPECT_EQ (instrumentText (back), instrumentText (larkfield()));
}

TEST (RailEdit, TakesAStopOffItsBus)
{
    const auto off = moveStopToBus (larkfield(), krummhorn, "");
    EXPECT_EQ (tabletOf (off).asFound->bus, "Upper reeds");
    const auto found = moveStopToBus (parseInstrument (instrumentText (off), "o"), krummhorn, "Upper reeds");
    EXPECT_EQ (instrumentText (found), instrumentText (larkfield()));
}

TEST (RailEdit, NotesEachFieldApart)
{
    auto organ = setMixing (larkfield(), krummhorn, 82e3);
    organ = setRetired (std::move (organ), krummhorn, WhenRetired::open);
    organ = setPolarity (std::move (organ), krummhorn, -1);
    organ = setDivision (std::move (organ), krummhorn, "Lower manual");
    organ = giveCard (std::move (organ), krummhorn, "Oboe8.json");
    const auto& stop = tabletOf (organ);
    EXPECT_EQ (stop.mixingOhms, 82e3);
    EXPECT_EQ (stop.asFound->mixingOhms, 100e3);
    EXPECT_EQ (stop.whenRetired, WhenRetired::open);
    EXPECT_EQ (stop.asFound->whenRetired, WhenRetired::grounded);
    EXPECT_EQ (stop.polarity, -1);
    EXPECT_EQ (stop.asFound->polarity, 1);
    EXPECT_EQ (stop.division, "Lower manual");
    EXPECT_EQ (stop.asFound->division, "Upper manual");
    EXPECT_EQ (stop.cardFile, "Oboe8.json");
    EXPECT_EQ (stop.asFound->cardFile, "Krummhorn8.json");
    EXPECT_FALSE (stop.asFound->bus);
    organ = setPolarity (std::move (organ), krummhorn, 1);
    EXPECT_FALSE (tabletOf (organ).asFound->polarity);
    EXPECT_TRUE (tabletOf (organ).asFound->mixingOhms);
}

TEST (RailEdit, NotesWhatIsTheSameAsNothing)
{
    EXPECT_FALSE (tabletOf (setMixing (larkfield(), krummhorn, 100e3)).asFound);
    EXPECT_FALSE (tabletOf (giveCard (larkfield(), krummhorn, "Krummhorn8.json")).asFound);
}

TEST (RailEdit, RefusesInASentence)
{
    const auto refusal = [] (const auto& edit) { return errorSentence ([&edit] { edit (larkfield()); }); };
    EXPECT_EQ (
        refusal ([] (const Instrument& organ) { moveStopToBus (organ, krummhorn, "Pedals"); }),
        "There is no mixing bus \"Pedals\" in this instrument; it has \"Upper flutes\", \"Upper reeds\", \"Lower "
        "chorus\" and \"Lower flutes\".");
    EXPECT_EQ (refusal ([] (const Instrument& organ) { moveStopToBus (organ, krummhorn, "Uper reeds"); }),
               "There is no mixing bus \"Uper reeds\" in this instrument; did you mean \"Upper reeds\"?");
    EXPECT_EQ (refusal ([] (const Instrument& organ) { setMixing (organ, "Krumhorn 8", 1e3); }),
               "There is no tablet \"Krumhorn 8\" in this instrument; did you mean \"Krummhorn 8\"?");
    EXPECT_EQ (
        refusal ([] (const Instrument& organ) { setMixing (organ, krummhorn, 0.0); }),
        "The mixing resistor of \"Krummhorn 8\" cannot be 0 \xCE\xA9; give it 1.00 m\xCE\xA9 to 1.00 T\xCE\xA9.");
    EXPECT_EQ (refusal ([] (const Instrument& organ) { setPolarity (organ, krummhorn, 0); }),
               "The polarity of \"Krummhorn 8\" must be 1 or -1, not 0.");
    EXPECT_EQ (
        refusal ([] (const Instrument& organ) { setDivision (organ, krummhorn, "Great"); }),
        "There is no division \"Great\" in this instrument; it has \"Upper manual\", \"Lower manual\" and Pedal.");
    EXPECT_EQ (
        refusal ([] (const Instrument& organ) { giveCard (organ, krummhorn, "Cards/../../Oboe8.json"); }),
        "The card \"Cards/../../Oboe8.json\" lies outside the folder of the instrument; copy it into that folder "
        "and name it from there.");
    EXPECT_EQ (refusal ([] (const Instrument& organ) { giveCard (organ, krummhorn, std::string ("a\0b", 3)); }),
               "The file name \"a?b\" cannot stand in a document; give the card another.");
    EXPECT_EQ (refusal (
                   [] (Instrument organ)
                   {
                       organ.mixingBuses.clear();
                       moveStopToBus (organ, krummhorn, "Upper reeds");
                   }),
               "There is no mixing bus \"Upper reeds\" in this instrument; it has none.");
}

TEST (RailEdit, KeepsDayAndReasonAsLongAsAnythingIsAltered)
{
    const AlterationNote note { "2026-11-27", "Too loud beside the flute." };
    EXPECT_EQ (errorSentence ([&] { noteAlteration (larkfield(), krummhorn, note); }),
               "Tablet \"Krummhorn 8\" is as it was found, so there is nothing to note yet.");
    auto organ = noteAlteration (setMixing (larkfield(), krummhorn, 120e3), krummhorn, note);
    EXPECT_EQ (tabletOf (organ).asFound->note, note);
    organ.unknownFields["stopAsFound:" + krummhorn] = R"({"by":"A. B."})";
    organ = parseInstrument (instrumentText (organ), "o");
    EXPECT_EQ (tabletOf (organ).asFound->note, note);
    EXPECT_EQ (organ.unknownFields.count ("stopAsFound:" + krummhorn), 1U);
    EXPECT_EQ (errorSentence (
                   [&] {
                       noteAlteration (organ, krummhorn, { "yesterday", {} });
                   }),
               "The date \"yesterday\" is none; write year, month and day as \"2026-11-27\".");
    EXPECT_EQ (errorSentence (
                   [&] {
                       noteAlteration (organ, krummhorn, { {}, std::string (1001, 'w') });
                   }),
               "The reason is longer than 1000 characters; shorten it, and put the rest into the instrument's note.");
    EXPECT_EQ (instrumentText (setMixing (organ, krummhorn, 100e3)), instrumentText (larkfield()));
}

TEST (RailEditTaps, MoveToAKeyedBus)
{
    const auto card = moveTapToKeyedBus (krummhornCard(), "Square 8", larkfield(), "Pulse 8");
    const auto& tap = card.taps[0];
    EXPECT_EQ (tap.name, "Square 8");
    EXPECT_EQ (tap.wave.kind, WaveKind::pulse);
    EXPECT_EQ (tap.wave.duty, 0.0625);
    EXPECT_EQ (tap.node, "sq");
    EXPECT_EQ (tap.asFound->source, waveSourceOf (krummhornCard().taps[0]));
    EXPECT_FALSE (card.taps[1].asFound);

    const auto again = moveTapToKeyedBus (card, "Square 8", larkfield(), "Square 16");
    EXPECT_EQ (again.taps[0].asFound->source, tap.asFound->source);
    EXPECT_EQ (again.taps[0].footage, Footage::parse ("16"));
    EXPECT_EQ (cardText (parseCard (cardText (again), "c")), cardText (again));
    EXPECT_EQ (cardText (moveTapToKeyedBus (again, "Square 8", larkfield(), "Square 8")), cardText (krummhornCard()));
    EXPECT_EQ (errorSentence ([] { moveTapToKeyedBus (krummhornCard(), "Square 8", larkfield(), "Bells"); }),
               "There is no keyed bus \"Bells\" in this instrument; it has \"Square 16\", \"Square 8\", \"Square 4\", "
               "\"Square 2 2/3\", \"Square 2\", \"Staircase 8\", \"Outphased 8\" and \"Pulse 8\".");
    EXPECT_EQ (errorSentence ([] { moveTapToKeyedBus (krummhornCard(), "Square 4", larkfield(), "Pulse 8"); }),
               "There is no tap \"Square 4\" on this card; did you mean \"Square 8\"?");
}

TEST (RailEditTaps, TurnPolarityAndChangeNode)
{
    auto card = moveTapToNode (setTapPolarity (krummhornCard(), "Square 8", -1), "Square 8", "h");
    EXPECT_EQ (card.taps[0].asFound->polarity, 1);
    EXPECT_EQ (card.taps[0].asFound->node, "sq");
    card = noteAlteration (std::move (card), "Square 8", { "2026-11-27", "Hum." });
    EXPECT_EQ (card.taps[0].asFound->note.why, "Hum.");
    card = moveTapToNode (setTapPolarity (std::move (card), "Square 8", 1), "Square 8", "sq");
    EXPECT_EQ (cardText (card), cardText (krummhornCard()));
    EXPECT_EQ (errorSentence ([&] { noteAlteration (card, "Square 8", {}); }),
               "Tap \"Square 8\" is as it was found, so there is nothing to note yet.");
    EXPECT_EQ (errorSentence ([&] { setTapPolarity (card, "Square 8", 2); }),
               "The polarity of \"Square 8\" must be 1 or -1, not 2.");
}

TEST (RailEditTaps, RefuseALevelThatADocumentCannotHold)
{
    auto source = waveSourceOf (krummhornCard().taps[0]);
    source.voltsPeakToPeak = 2e4;
    EXPECT_EQ (errorSentence ([&] { setTapSource (krummhornCard(), "Square 8", source); }),
               "Tap \"Square 8\": the voltage peak to peak is 20.0 kV but must be from 0 V to 10.0 kV.");
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/ChangeList.h"

#include "Organ/CardDocument.h"
#include "Organ/CardEdit.h"
#include "Organ/ErrorSentence.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/RailEdit.h"
#include "Organ/TestOrgan.h"
#include "Support/Random.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

const std::string krummhorn = "Krummhorn 8";

std::vector<std::string> wordsOf (const std::vector<Alteration>& list)
{
    std::vector<std::string> words;
    words.reserve (list.size());
    for (const auto& alteration : list)
        words.push_back (alteration.words);
    return words;
}

std::string wayBackOf (const Instrument& instrument)
{
    const auto list = changeList (instrument);
    return list.size() == 1 ? list.front().wayBack : std::to_string (list.size()) + " alterations";
}

Instrument larkfield()
{
    return test::larkfield().instrument;
}

} // namespace

TEST (ChangeList, OfAnOrganAsFoundIsEmpty)
{
    const auto organ = test::larkfield();
    EXPECT_TRUE (changeList (organ.instrument, organ.cards).empty());
}

TEST (ChangeList, NamesBothEndsOfEachAlteration)
{
    auto organ = moveStopToBus (larkfield(), krummhorn, "Lower chorus");
    organ = setMixing (std::move (organ), krummhorn, 82e3);
    organ = setRetired (std::move (organ), krummhorn, WhenRetired::open);
    organ = setPolarity (std::move (organ), krummhorn, -1);
    organ = setDivision (std::move (organ), krummhorn, "Lower manual");
    organ = giveCard (std::move (organ), krummhorn, "Oboe8.json");
    organ = giveCard (std::move (organ), "Oboe 8", "");
    EXPECT_EQ (wordsOf (changeList (organ)), (std::vector<std::string> {
                                                 "Krummhorn 8: card: Krummhorn8.json -> Oboe8.json",
                                                 "Krummhorn 8: division: Upper manual -> Lower manual",
                                                 "Krummhorn 8: mixing bus: Upper reeds -> Lower chorus",
                                                 "Krummhorn 8: mixing resistor: 100k -> 82k",
                                                 "Krummhorn 8: polarity: normal -> reversed",
                                                 "Krummhorn 8: when retired: grounded -> open",
                                                 "Oboe 8: card: Oboe8.json -> blank",
                                             }));
}

TEST (ChangeList, TellsTheWayBack)
{
    EXPECT_EQ (
        wayBackOf (moveStopToBus (larkfield(), krummhorn, "Lower chorus")),
        "Take the mixing resistor of \"Krummhorn 8\" off mixing bus \"Lower chorus\" and put it back on mixing bus "
        "\"Upper reeds\".");
    EXPECT_EQ (wayBackOf (moveStopToBus (larkfield(), krummhorn, "")),
               "Put the mixing resistor of \"Krummhorn 8\" back on mixing bus \"Upper reeds\".");
    EXPECT_EQ (wayBackOf (setMixing (larkfield(), krummhorn, 82.5e3)),
               "Put 100k back in place of 82k5 as the mixing resistor of \"Krummhorn 8\".");
    EXPECT_EQ (wayBackOf (setRetired (larkfield(), krummhorn, WhenRetired::open)),
               "Wire the contact of \"Krummhorn 8\" so that its mixing resistor goes to common when retired.");
    EXPECT_EQ (wayBackOf (setPolarity (larkfield(), krummhorn, -1)),
               "Turn the polarity of \"Krummhorn 8\" back to normal.");
    EXPECT_EQ (wayBackOf (setDivision (larkfield(), krummhorn, "Pedal")),
               "Let the keys of \"Upper manual\" play \"Krummhorn 8\" again, not those of Pedal.");
    EXPECT_EQ (wayBackOf (giveCard (larkfield(), krummhorn, "Oboe8.json")),
               "Put the card Krummhorn8.json back into \"Krummhorn 8\" in place of Oboe8.json.");
    auto blank = larkfield();
    blank.stops[0].cardFile.clear();
    blank.stops[0].bus.clear();
    EXPECT_EQ (wayBackOf (giveCard (blank, "Diapason 8", "Oboe8.json")),
               "Take the card Oboe8.json out of \"Diapason 8\"; the tablet was blank.");
    EXPECT_EQ (wayBackOf (moveStopToBus (blank, "Diapason 8", "Lower chorus")),
               "Take the mixing resistor of \"Diapason 8\" off mixing bus \"Lower chorus\"; the stop was on none.");
}

TEST (ChangeList, NamesKeyedBusesOfTapsAndAllWhoUseTheCard)
{
    auto organ = test::larkfield();
    auto& card = *organ.cards.ofStops[8];
    ASSERT_EQ (organ.instrument.stops[8].name, krummhorn);
    card = moveTapToKeyedBus (card, "Square 8", organ.instrument, "Pulse 8");
    card = moveTapToNode (setTapPolarity (std::move (card), "Staircase 8", -1), "Staircase 8", "m");
    organ.instrument.stops[9].cardFile = organ.instrument.stops[8].cardFile;
    organ.cards.ofStops[9] = card;
    const auto list = changeList (organ.instrument, organ.cards);
    EXPECT_EQ (wordsOf (list),
               (std::vector<std::string> {
                   "Krummhorn 8 and String 8, tap Square 8: keyed wave: Square 8 (square, 8 ft, 1.00 V p-p behind 1.00 "
                   "k\xCE\xA9) -> Pulse 8 (pulse of duty 0.0625, 8 ft, 1.00 V p-p behind 1.00 k\xCE\xA9)",
                   "Krummhorn 8 and String 8, tap Staircase 8: node: st -> m",
                   "Krummhorn 8 and String 8, tap Staircase 8: polarity: normal -> reversed",
               }));
    EXPECT_EQ (list[0].wayBack,
               "Take tap \"Square 8\" of \"Krummhorn 8 and String 8\" off keyed bus \"Pulse 8\" and put "
               "it back on keyed bus \"Square 8\".");
    EXPECT_EQ (list[1].wayBack,
               "Take the lead of tap \"Staircase 8\" of \"Krummhorn 8 and String 8\" off node \"m\" and "
               "back to node \"st\".");
    EXPECT_EQ (list[0].users, (std::vector<std::string> { krummhorn, "String 8" }));
    EXPECT_EQ (list[0].cardFile, "Krummhorn8.json");
    EXPECT_TRUE (list[0].isOfTap());
}

TEST (ChangeList, DescribesAWaveThatIsOnNoKeyedBus)
{
    Card card = test::bareCard();
    auto source = waveSourceOf (card.taps[0]);
    source.wave.kind = WaveKind::staircase;
    source.wave.weights = { 1.0, 0.0, 0.25, 0.125 };
    card = setTapSource (std::move (card), "W", source);
    EXPECT_EQ (
        wordsOf (changeList (card)),
        (std::vector<std::string> { "Bare 8, tap W: keyed wave: square, 8 ft, 1.00 V p-p behind 0 \xCE\xA9 -> "
                                    "staircase of 4 ranks weighted 1:0:0.25:0.125, 8 ft, first 1.00 V p-p behind 0 "
                                    "\xCE\xA9" }));
}

TEST (ChangeList, HasDayAndReason)
{
    const AlterationNote note { "2026-11-27", "Too loud." };
    const auto list = changeList (noteAlteration (setMixing (larkfield(), krummhorn, 120e3), krummhorn, note));
    ASSERT_EQ (list.size(), 1U);
    EXPECT_EQ (list[0].note, note);
}

TEST (ChangeList, LeavesOutWhatIsTheSame)
{
    auto organ = larkfield();
    organ.stops[0].asFound.emplace().bus = organ.stops[0].bus;
    EXPECT_TRUE (changeList (organ).empty());
}

TEST (ChangeList, PutsBackOneAlterationAlone)
{
    const auto organ = setMixing (moveStopToBus (larkfield(), krummhorn, "Lower chorus"), krummhorn, 82e3);
    const auto list = changeList (organ);
    ASSERT_EQ (list.size(), 2U);
    EXPECT_EQ (instrumentText (revert (organ, list[0])), instrumentText (setMixing (larkfield(), krummhorn, 82e3)));
    EXPECT_EQ (instrumentText (revert (organ, list[1])),
               instrumentText (moveStopToBus (larkfield(), krummhorn, "Lower chorus")));
    EXPECT_EQ (errorSentence ([&] { revert (larkfield(), list[0]); }),
               "The mixing bus of \"Krummhorn 8\" is as it was found already; there is nothing to put back.");
    EXPECT_EQ (errorSentence ([&] { revert (test::bareCard(), list[0]); }),
               "The mixing bus of \"Krummhorn 8\" is no matter of a card; put it back where it stands.");

    // What the stop was on may have been taken out since.
    auto scrapped = organ;
    scrapped.mixingBuses.erase (scrapped.mixingBuses.begin() + 1);
    EXPECT_EQ (
        errorSentence ([&] { revert (scrapped, list[0]); }),
        "There is no mixing bus \"Upper reeds\" in this instrument; it has \"Upper flutes\", \"Lower chorus\" and "
        "\"Lower flutes\".");
}

TEST (ChangeList, FollowsATapThatIsRenamed)
{
    auto card = renameTap (moveTapToNode (test::bareCard(), "W", "b"), "W", "Square 8");
    card = renameNode (std::move (card), "b", "c");
    EXPECT_EQ (wordsOf (changeList (card)), (std::vector<std::string> { "Bare 8, tap Square 8: node: a -> c" }));
    EXPECT_EQ (errorSentence ([&] { renameNode (setOutput (card, "c"), "c", "a"); }),
               "Node \"a\" is where tap \"Square 8\" was found; choose another name, so that it can be put back.");
    EXPECT_EQ (changeList (renameNode (moveTapToNode (test::bareCard(), "W", "b"), "a", "e")).front().words,
               "Bare 8, tap W: node: e -> b");
}

} // namespace stopwright

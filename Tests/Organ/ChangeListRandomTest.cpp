// SPDX-License-Identifier: GPL-3.0-or-later
//
// Whatever was done to the rail of an organ, putting back all that the change list names gives the documents as they were.
#include "Organ/CardDocument.h"
#include "Organ/ChangeList.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/RailEdit.h"
#include "Organ/TestOrgan.h"
#include "Support/Random.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

template <typename List>
const auto& anyOf (const List& list, Random& random)
{
    return list[static_cast<std::size_t> (random.integer (0, static_cast<int> (list.size()) - 1))];
}

Instrument editRail (const Instrument& organ, Random& random)
{
    static const std::vector<double> values { 33e3, 47e3, 68e3, 100e3, 220e3, 0.1 + 0.2 };
    static const std::vector<std::string> files { "", "Oboe8.json", "Krummhorn8.json", "Sub/My card.json" };
    const auto& tablet = anyOf (organ.stops, random).name;
    switch (random.integer (0, 6))
    {
        case 0:
            return moveStopToBus (organ, tablet, random.chance (0.2) ? "" : anyOf (organ.mixingBuses, random).name);
        case 1:
            return setMixing (organ, tablet, anyOf (values, random));
        case 2:
            return setRetired (organ, tablet, random.chance (0.5) ? WhenRetired::open : WhenRetired::grounded);
        case 3:
            return setPolarity (organ, tablet, random.chance (0.5) ? 1 : -1);
        case 4:
            return setDivision (organ, tablet, anyOf (organ.divisions, random).name);
        case 5:
            return giveCard (organ, tablet, anyOf (files, random));
        default:
        {
            const auto list = changeList (organ);
            return list.empty() ? organ : noteAlteration (organ, anyOf (list, random).tablet, { "2026-11-27", "Why" });
        }
    }
}

Card editTap (const Card& card, const Instrument& organ, Random& random)
{
    static const std::vector<std::string> nodes { "0", "sq", "st", "out", "new node" };
    const auto& tap = anyOf (card.taps, random).name;
    switch (random.integer (0, 2))
    {
        case 0:
            return moveTapToKeyedBus (card, tap, organ, anyOf (organ.keyedBuses, random).name);
        case 1:
            return setTapPolarity (card, tap, random.chance (0.5) ? 1 : -1);
        default:
            return moveTapToNode (card, tap, anyOf (nodes, random));
    }
}

/// Puts everything back, in any order, through the text of the document between one and the next.
template <typename Document, typename Read, typename Write>
Document putAllBack (Document document, Random& random, Read read, Write write)
{
    for (auto list = changeList (document); ! list.empty(); list = changeList (document))
    {
        const auto count = list.size();
        document = read (write (revert (document, anyOf (list, random))), "back");
        EXPECT_EQ (changeList (document).size(), count - 1);
    }
    return document;
}

} // namespace

TEST (ChangeLists, PutBackGiveTheInstrumentToTheByte)
{
    Random random (20261129);
    const auto found = test::larkfield().instrument;
    for (int round = 0; round < 30; ++round)
    {
        auto organ = found;
        for (int edits = random.integer (1, 60); edits > 0; --edits)
            organ = editRail (organ, random);
        ASSERT_EQ (instrumentText (parseInstrument (instrumentText (organ), "o")), instrumentText (organ));
        const auto back = putAllBack (organ, random, parseInstrument, instrumentText);
        ASSERT_EQ (instrumentText (back), instrumentText (found));
    }
}

TEST (ChangeLists, PutBackGiveTheCardToTheByte)
{
    Random random (20261130);
    const auto organ = test::larkfield();
    for (int round = 0; round < 100; ++round)
    {
        const auto& found = *anyOf (organ.cards.ofStops, random);
        auto card = found;
        for (int edits = random.integer (1, 12); edits > 0; --edits)
            card = editTap (card, organ.instrument, random);
        ASSERT_EQ (cardText (parseCard (cardText (card), "c")), cardText (card));
        const auto back = putAllBack (card, random, parseCard, cardText);
        ASSERT_EQ (cardText (back), cardText (found));
    }
}

} // namespace stopwright

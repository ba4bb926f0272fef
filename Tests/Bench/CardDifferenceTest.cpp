// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/CardDifference.h"

#include "Bench/SmallCard.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

using test::smallCard;

const CardKnob position { CardKnob::Place::part, "P1", KnobKind::position };

} // namespace

TEST (CardDifference, ListsTheKnobsThatMoved)
{
    auto to = smallCard();
    setValueOf (to, { CardKnob::Place::part, "R1", KnobKind::value }, 22e3);
    setValueOf (to, { CardKnob::Place::tapLevel, "W1", KnobKind::value }, 1.0);
    const auto moves = knobMovesBetween (smallCard(), to);
    ASSERT_TRUE (moves);
    ASSERT_EQ (moves->size(), 2u);
    EXPECT_EQ ((*moves)[0].knob.name, "W1");
    EXPECT_EQ ((*moves)[1].value, 22e3);
}

TEST (CardDifference, NothingMovedIsNoMove)
{
    const auto moves = knobMovesBetween (smallCard(), smallCard());
    ASSERT_TRUE (moves);
    EXPECT_TRUE (moves->empty());
}

TEST (CardDifference, ASwitchNeedsTheCardSetAnew)
{
    auto to = smallCard();
    std::get<Switch> (to.parts[2].value).closed = true;
    EXPECT_FALSE (knobMovesBetween (smallCard(), to));
}

TEST (CardDifference, AnotherWiringNeedsTheCardSetAnew)
{
    auto to = smallCard();
    to.parts[0].nodes = { "in", "w" };
    EXPECT_FALSE (knobMovesBetween (smallCard(), to));
    to = smallCard();
    to.parts.pop_back();
    to.parts.pop_back();
    EXPECT_FALSE (knobMovesBetween (smallCard(), to));
}

TEST (CardDifference, AnEndOfTheTrackNeedsTheCardSetAnew)
{
    auto to = smallCard();
    setValueOf (to, position, 0.9);
    EXPECT_TRUE (knobMovesBetween (smallCard(), to));
    setValueOf (to, position, 1.0);
    EXPECT_FALSE (knobMovesBetween (smallCard(), to));
    EXPECT_FALSE (knobMovesBetween (to, smallCard()));
}

TEST (CardKnob, KnowsTheNumbersOfACard)
{
    const auto knobs = knobsOf (smallCard());
    ASSERT_EQ (knobs.size(), 4u); // level, R1, position, track; the switch has none
    EXPECT_EQ (valueOf (smallCard(), knobs[0]), 2.0);
    EXPECT_EQ (valueOf (smallCard(), position), 0.5);
    EXPECT_THROW (valueOf (smallCard(), { CardKnob::Place::part, "R9", KnobKind::value }), Error);
    EXPECT_THROW (valueOf (smallCard(), { CardKnob::Place::part, "R1", KnobKind::windingOhms }), Error);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/SilentStops.h"

#include "Organ/TestOrgan.h"

#include <gtest/gtest.h>

#include <optional>

namespace stopwright::test
{

namespace
{

std::optional<Silence> silenceOf (const TestOrgan& organ, const std::vector<HeldKey>& held)
{
    const auto silent = silentStops (organ.instrument, organ.cards, held);
    if (silent.empty())
        return {};
    return silent.front().why;
}

} // namespace

TEST (SilentStops, EachReason)
{
    auto organ = emptyOrgan (passiveBus());
    organ.add ("Stop", bareCard ("1"));
    EXPECT_EQ (silenceOf (organ, { { "Upper", 60 } }), std::nullopt);
    EXPECT_EQ (silenceOf (organ, { { "Lower", 60 } }), Silence::noKey);
    EXPECT_EQ (silenceOf (organ, {}), Silence::noKey);
    // A 1 ft stop is three octaves up; with C7 the last generator, keys end at C4.
    organ.instrument.tuning.highestKey = 96;
    EXPECT_EQ (silenceOf (organ, { { "Upper", 60 } }), std::nullopt);
    EXPECT_EQ (silenceOf (organ, { { "Upper", 61 } }), Silence::noGenerator);
    EXPECT_EQ (silenceOf (organ, { { "Upper", 61 }, { "Upper", 40 } }), std::nullopt);
    organ.instrument.stops.front().bus.clear();
    EXPECT_EQ (silenceOf (organ, { { "Upper", 60 } }), Silence::onNoBus);
    organ.cards.ofStops.front().reset();
    EXPECT_EQ (silenceOf (organ, { { "Upper", 60 } }), Silence::blank);
    organ.instrument.stops.front().drawn = false;
    EXPECT_EQ (silenceOf (organ, { { "Upper", 60 } }), std::nullopt) << "what is not drawn is not missed";
}

TEST (SilentStops, ADrawnCouplerPlays)
{
    auto organ = emptyOrgan (passiveBus());
    organ.add ("Stop", bareCard ("8"));
    organ.instrument.couplers = { { "Upper to Lower", "Lower", "Upper", 0, true } };
    EXPECT_EQ (silenceOf (organ, { { "Lower", 60 } }), std::nullopt);
    organ.instrument.couplers.front().drawn = false;
    EXPECT_EQ (silenceOf (organ, { { "Lower", 60 } }), Silence::noKey);
}

} // namespace stopwright::test

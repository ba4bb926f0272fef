// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/InstrumentDoubts.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stopwright
{

namespace
{

/// One manual, one keyed bus, one stop that goes through a mixing bus and a preamp to an outlet: nothing to doubt.
struct SmallOrgan
{
    SmallOrgan()
    {
        organ.divisions = { { "Manual", 36, 96, {} } };
        organ.keyedBuses.resize (1);
        organ.mixingBuses.resize (1);
        organ.mixingBuses[0].name = "Mix";
        organ.outlets.resize (1);
        organ.outlets[0].name = "Main";
        organ.preamps = { { "Preamp", "Mix", "Main", { PreampStage() } } };
        organ.preamps[0].stages[0].name = "Gain";
        organ.stops.resize (1);
        organ.stops[0].name = "Flute 8";
        organ.stops[0].division = "Manual";
        organ.stops[0].cardFile = "Flute8.json";
        organ.stops[0].bus = "Mix";

        Card card;
        card.taps.resize (1);
        card.taps[0].name = "Square 8";
        cards.ofStops = { card };
        cards.ofStages = { { std::nullopt } };
    }

    std::vector<std::string> doubts() const { return doubtsOf (organ, cards); }

    Tap& tap() { return cards.ofStops[0].value().taps[0]; }

    Instrument organ;
    InstrumentCards cards;
};

using Sentences = std::vector<std::string>;

} // namespace

TEST (InstrumentDoubts, AreNoneWhenEverythingSounds)
{
    EXPECT_EQ (SmallOrgan().doubts(), Sentences());
}

TEST (InstrumentDoubts, OfATablet)
{
    SmallOrgan blank;
    blank.organ.stops[0].cardFile.clear();
    blank.cards.ofStops[0].reset();
    EXPECT_EQ (blank.doubts(), Sentences { "tablet \"Flute 8\" is blank; give it a card to make it a stop." });
    blank.organ.stops[0].drawn = true;
    EXPECT_EQ (
        blank.doubts(),
        Sentences { "tablet \"Flute 8\" is drawn but blank, so it gives nothing; give it a card, or retire it." });

    SmallOrgan loose;
    loose.organ.stops[0].bus.clear();
    EXPECT_EQ (loose.doubts(),
               (Sentences { "mixing bus Mix has no stops; move some to it, or leave it out.",
                            "tablet \"Flute 8\" is on no mixing bus, so it is silent in the organ; give it one." }));
    loose.organ.mixingBuses.clear();
    loose.organ.preamps.clear();
    loose.organ.outlets.clear();
    EXPECT_EQ (loose.doubts(), Sentences()) << "an instrument without mixing buses";
}

TEST (InstrumentDoubts, OfWhatATabletTaps)
{
    SmallOrgan strange;
    strange.tap().footage = Footage::parse ("4");
    EXPECT_EQ (strange.doubts(),
               Sentences { "tablet \"Flute 8\": tap \"Square 8\" takes a wave that no keyed bus of the "
                           "instrument carries; choose a bus, or add one to the instrument." });

    SmallOrgan silent;
    silent.tap().voltsPeakToPeak = 0.0;
    EXPECT_EQ (silent.doubts(), Sentences { "tablet \"Flute 8\" has no level, for its taps have 0 V peak to peak; give "
                                            "them a voltage." });
}

TEST (InstrumentDoubts, OfKeysWithoutAGenerator)
{
    SmallOrgan high;
    high.tap().footage = Footage::parse ("1");
    high.organ.keyedBuses[0].footage = Footage::parse ("1");
    // Three octaves up from C#6 lies C#9, a semitone above the highest generator, C9.
    EXPECT_EQ (high.doubts(),
               Sentences { "tablet \"Flute 8\": 12 keys from C#6 to C7 stay silent, for no generator has "
                           "their pitch; tap a bus of another footage, or let the ranks break back." });
    high.organ.tuning.top = TopBehaviour::breakBack;
    EXPECT_EQ (high.doubts(), Sentences());

    SmallOrgan mixed;
    mixed.tap().footage = Footage::parse ("1");
    mixed.organ.keyedBuses[0].footage = Footage::parse ("1");
    mixed.organ.keyedBuses.emplace_back();
    mixed.cards.ofStops[0].value().taps.emplace_back();
    EXPECT_EQ (mixed.doubts(), Sentences()) << "one tap of two is enough for a key to sound";
}

TEST (InstrumentDoubts, OfTheWayOut)
{
    SmallOrgan cut;
    cut.organ.preamps.clear();
    EXPECT_EQ (cut.doubts(),
               (Sentences { "mixing bus Mix feeds no preamp, so its stops are silent; add a preamp that names it.",
                            "outlet Main is fed by no preamp; lead one to it, or leave it out." }));

    SmallOrgan closed;
    closed.organ.preamps[0].stages[0].gain = 0.0;
    EXPECT_EQ (closed.doubts(),
               Sentences { "stage Gain of preamp Preamp has a gain of 0, so nothing passes it; give it a gain." });
}

TEST (InstrumentDoubts, OfALevelThatTheKeyedBusDoesNotHave)
{
    SmallOrgan organ;
    organ.organ.keyedBuses[0].voltsPeakToPeak = organ.tap().voltsPeakToPeak + 1.0;
    ASSERT_EQ (organ.doubts().size(), 1U);
    EXPECT_NE (organ.doubts().front().find ("the card's numbers sound"), std::string::npos) << organ.doubts().front();
}

TEST (InstrumentDoubts, OfAKeyedBusThatNoTapReaches)
{
    SmallOrgan organ;
    organ.organ.keyedBuses.push_back (organ.organ.keyedBuses[0]);
    organ.organ.keyedBuses[0].name = "Square 8";
    organ.organ.keyedBuses[1].name = "Square 8 slow";
    ASSERT_EQ (organ.doubts().size(), 1U);
    EXPECT_NE (organ.doubts().front().find ("Square 8 slow"), std::string::npos) << organ.doubts().front();
}

TEST (InstrumentDoubts, OfATabletThatCannotBeNamed)
{
    SmallOrgan organ;
    organ.organ.stops[0].name = "Flute, 8";
    EXPECT_EQ (organ.doubts().size(), 1U);
}

TEST (InstrumentDoubts, OfMoreStagesThanLamps)
{
    SmallOrgan organ;
    organ.organ.preamps[0].stages.resize (65);
    EXPECT_EQ (organ.doubts().size(), 1U);
    organ.organ.preamps[0].stages.resize (64);
    EXPECT_EQ (organ.doubts().size(), 0U);
}

TEST (InstrumentDoubts, OfWhatCannotBePutBack)
{
    SmallOrgan altered;
    auto& found = altered.organ.stops[0].asFound.emplace();
    found.bus = "";
    found.division = "Manual";
    EXPECT_EQ (altered.doubts(), Sentences());
    found.bus = "Scrapped";
    found.division = "Echo";
    EXPECT_EQ (
        altered.doubts(),
        (Sentences { "tablet \"Flute 8\" was found on mixing bus Scrapped, which the instrument does not have, so "
                     "that cannot be put back; add it, or name another in asFound.",
                     "tablet \"Flute 8\" was found on division Echo, which the instrument does not have, so that "
                     "cannot be put back; add it, or name another in asFound." }));
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/TapLoad.h"

#include "Study/LoadedStops.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>

namespace stopwright::test
{

namespace
{

/// The 8 ft square as a keyed bus behind so many ohms.
KeyedBus squareBus (double sourceOhms)
{
    KeyedBus bus;
    bus.name = "Square 8";
    bus.sourceOhms = sourceOhms;
    return bus;
}

/// The 8 ft square through so many ohms to the output.
Card seriesCard (double ohms)
{
    Card card = bareCard();
    card.parts = { { "R1", { "a", "b" }, Resistor { ohms }, 0.0 } };
    card.output = "b";
    return card;
}

TapLoad onlyLoad (const TestOrgan& organ, std::size_t stop = 0)
{
    const RailStudy study (organ.instrument, organ.cards);
    return tapLoads (study, stop, study.asOpened()).at (0);
}

} // namespace

// R / (R + 47 k), closed form.
TEST (TapLoad, ResistorsOnANodeOf47k)
{
    struct Value
    {
        double ohms;
        double db;
    };

    for (const Value& value :
         { Value { 220e3, -1.682 }, Value { 470e3, -0.828 }, Value { 1e6, -0.399 }, Value { 2.2e6, -0.184 } })
    {
        Card card = bareCard();
        card.parts = { { "R1", { "a", "0" }, Resistor { value.ohms }, 0.0 } };
        auto organ = emptyOrgan (virtualEarth());
        organ.instrument.keyedBuses = { squareBus (47e3) };
        organ.add ("Stop", buffered (card));
        const auto load = onlyLoad (organ);
        ASSERT_EQ (load.atKeys.size(), 3U);
        EXPECT_EQ (load.atKeys[0].key, 36);
        EXPECT_EQ (load.atKeys[1].key, 66);
        EXPECT_EQ (load.atKeys[2].key, 96);
        for (const auto& at : load.atKeys)
        {
            EXPECT_NEAR (at.changeDb, value.db, 0.0005);
            EXPECT_NEAR (std::abs (at.inputOhms), value.ohms, 1e-6 * value.ohms);
        }
    }
}

// 10 k, the mixing resistor of 47 k, and the bus: a load of 100 k beside what the other stop puts on it; nothing on a
// virtual earth. Closed form.
TEST (TapLoad, SeesTheBusThroughTheCard)
{
    auto organ = emptyOrgan (passiveBus());
    organ.instrument.keyedBuses = { squareBus (1e3) };
    organ.add ("Stop", seriesCard (10e3));
    EXPECT_NEAR (onlyLoad (organ).atKeys[1].inputOhms.real(), 157e3, 1e-3);
    organ.add ("Other", bareCard());
    EXPECT_NEAR (onlyLoad (organ).atKeys[1].inputOhms.real(), 57e3 + 1.0 / (1.0 / 100e3 + 1.0 / 47e3), 1e-3);

    auto loom = passiveBus();
    loom.loadFarads = 2e-9;
    auto other = emptyOrgan (loom);
    other.instrument.keyedBuses = { squareBus (1e3) };
    other.add ("Stop", seriesCard (10e3));
    const auto at = onlyLoad (other).atKeys[2];
    const std::complex<double> expected =
        57e3 + 1.0 / std::complex<double> (1.0 / 100e3, 2.0 * std::numbers::pi * at.frequencyHz * 2e-9);
    EXPECT_NEAR (std::abs (at.inputOhms - expected), 0.0, 1e-3);
    EXPECT_NEAR (at.changeDb, toDecibels (std::abs (expected / (expected + 1e3))), 1e-9);

    auto earth = emptyOrgan (virtualEarth());
    earth.instrument.keyedBuses = { squareBus (1e3) };
    earth.add ("Stop", seriesCard (10e3));
    EXPECT_NEAR (onlyLoad (earth).atKeys[1].inputOhms.real(), 57e3, 1e-3);
}

// A stop on no bus ends in its own parts.
TEST (TapLoad, AStopOnNoBus)
{
    Card card = seriesCard (10e3);
    card.parts.push_back ({ "R2", { "b", "0" }, Resistor { 90e3 }, 0.0 });
    auto organ = emptyOrgan (passiveBus());
    organ.instrument.keyedBuses = { squareBus (1e3) };
    organ.add ("Stop", card).bus.clear();
    EXPECT_NEAR (onlyLoad (organ).atKeys[1].inputOhms.real(), 100e3, 1e-3);
}

TEST (TapLoad, NamesWhoElseIsOnTheBus)
{
    auto organ = emptyOrgan (passiveBus());
    organ.instrument.keyedBuses = { squareBus (1e3) };
    organ.add ("Stop", seriesCard (10e3));
    organ.add ("Four", bareCard ("4"));
    organ.add ("Eight", bareCard());
    organ.add ("Elsewhere", bareCard(), "Lower");
    EXPECT_EQ (onlyLoad (organ).sharers, std::vector<std::size_t> { 2 });
    const auto four = onlyLoad (organ, 1);
    EXPECT_FALSE (four.keyedBus);
    EXPECT_TRUE (four.atKeys.empty());
}

// 220 k per key into 10 k: (220 + 10) / (220 + 10 n), closed form.
TEST (TapLoad, TenKeysOnCollectors)
{
    KeyedBus bus = squareBus (0.0);
    bus.collectorOhms = 220e3;
    EXPECT_NEAR (collectorSagDb (bus, 10), -2.868, 0.0005);
    EXPECT_EQ (collectorSagDb (bus, 1), 0.0);

    auto organ = emptyOrgan (virtualEarth());
    organ.instrument.keyedBuses = { bus };
    organ.add ("Stop", bareCard());
    const auto load = onlyLoad (organ);
    ASSERT_TRUE (load.tenKeysDb);
    EXPECT_NEAR (*load.tenKeysDb, -2.868, 0.0005);
    EXPECT_NEAR (load.busOhms, 220.0 / 230.0 * 10e3, 1e-6);
}

} // namespace stopwright::test

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/PlayableInstrument.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (PlayableInstrument, GetsABusAPreampAndAnOutletWhenItHasNone)
{
    Instrument instrument;
    instrument.stops.resize (2);
    instrument.stops[0].bus = "Gone";
    const auto playable = playableInstrument (instrument);
    ASSERT_EQ (playable.mixingBuses.size(), 1U);
    EXPECT_EQ (playable.mixingBuses[0].kind, BusKind::virtualEarth);
    EXPECT_EQ (playable.mixingBuses[0].feedbackOhms, 47e3);
    ASSERT_EQ (playable.preamps.size(), 1U);
    ASSERT_EQ (playable.outlets.size(), 1U);
    EXPECT_EQ (playable.outlets[0].kind, OutletKind::main);
    for (const StopTablet& stop : playable.stops)
        EXPECT_EQ (stop.bus, playable.mixingBuses[0].name);
}

TEST (PlayableInstrument, StaysAsItIsWhenItHasBuses)
{
    Instrument instrument;
    instrument.mixingBuses.resize (1);
    instrument.mixingBuses[0].name = "Reeds";
    instrument.stops.resize (1);
    instrument.stops[0].bus = "Elsewhere";
    const auto playable = playableInstrument (instrument);
    EXPECT_EQ (playable.mixingBuses.size(), 1U);
    EXPECT_TRUE (playable.preamps.empty());
    EXPECT_TRUE (playable.outlets.empty());
    EXPECT_EQ (playable.stops[0].bus, "Elsewhere");
}

} // namespace
} // namespace stopwright

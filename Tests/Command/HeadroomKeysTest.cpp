// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/HeadroomKeys.h"

#include "Units/Error.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace stopwright
{

namespace
{

/// Two manuals, a pedal of C2 to F4 and a set of bells from C6 to C7, with a drawn stop on each of those named.
Instrument organWith (const std::vector<std::string>& divisions)
{
    Instrument instrument;
    instrument.divisions = {
        { "Upper", 36, 96, {} }, { "Lower", 36, 96, {} }, { "Pedal", 36, 65, {} }, { "Bells", 84, 96, {} }
    };
    for (const auto& division : divisions)
    {
        StopTablet stop;
        stop.name = "Stop of " + division;
        stop.division = division;
        stop.cardFile = "Card.json";
        stop.bus = "Bus";
        stop.drawn = true;
        instrument.stops.push_back (stop);
    }
    return instrument;
}

std::vector<std::string> namesOf (const std::vector<HeldDivision>& divisions)
{
    std::vector<std::string> names;
    for (const auto& division : divisions)
        names.push_back (division.name);
    return names;
}

} // namespace

using Names = std::vector<std::string>;
using Keys = std::vector<int>;

TEST (HeadroomKeys, EveryDivisionThatDrawnStopsArePlayedFrom)
{
    auto organ = organWith ({ "Pedal", "Lower" });
    EXPECT_EQ (namesOf (heldDivisions (organ, {})), (Names { "Lower", "Pedal" }));
    EXPECT_EQ (namesOf (heldDivisions (organ, { {}, true, {} })), (Names { "Lower", "Pedal" }));
    EXPECT_EQ (keysOf (heldDivisions (organ, { {}, true, {} })).size(), 61U + 30U);
    EXPECT_EQ (namesOf (heldDivisions (organ, { {}, true, "Upper" })), Names { "Upper" });
    organ.stops[0].drawn = false;
    EXPECT_EQ (namesOf (heldDivisions (organ, {})), Names { "Lower" });
    organ.stops[1].bus.clear();
    EXPECT_TRUE (heldDivisions (organ, {}).empty());
}

TEST (HeadroomKeys, TheUsualNotesFitEveryCompass)
{
    const auto held = heldDivisions (organWith ({ "Upper", "Pedal", "Bells" }), {});
    ASSERT_EQ (held.size(), 3U);
    EXPECT_EQ (held[0].keys, usualChord());
    EXPECT_TRUE (held[0].leftAway.empty());
    EXPECT_EQ (held[1].keys, (Keys { 36, 43, 48, 52, 55, 60, 64 }));
    EXPECT_EQ (held[1].leftAway, (Keys { 67, 72, 76 }));
    EXPECT_EQ (held[2].keys.size(), 13U);
    EXPECT_TRUE (held[2].isWholeForWant);
    EXPECT_EQ (heldDivisions (organWith ({}), { {}, false, "Pedal" }).at (0).keys.size(), 7U);
}

TEST (HeadroomKeys, TypedKeysMustBeSomewhere)
{
    const auto organ = organWith ({ "Upper", "Pedal" });
    const auto held = heldDivisions (organ, { { 72, 40, 72 }, false, {} });
    ASSERT_EQ (held.size(), 2U);
    EXPECT_EQ (held[0].keys, (Keys { 40, 72 })) << "each once, ascending";
    EXPECT_EQ (held[1].keys, Keys { 40 });
    EXPECT_EQ (held[1].leftAway, Keys { 72 });
    EXPECT_THROW (heldDivisions (organ, { { 40, 97 }, false, {} }), Error);
    EXPECT_THROW (heldDivisions (organ, { { 72 }, false, "Pedal" }), Error);
    EXPECT_THROW (heldDivisions (organ, { {}, false, "Attic" }), Error);
    EXPECT_THROW (heldDivisions (organ, { {}, true, "Attic" }), Error);
}

} // namespace stopwright

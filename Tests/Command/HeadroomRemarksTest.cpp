// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/HeadroomRemarks.h"

#include "Units/Error.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace stopwright
{

namespace
{

using Sentences = std::vector<std::string>;

/// Two drawn stops on a bare wire of 10 k; behind it an amplifier with 47 k of input.
Instrument wire()
{
    Instrument instrument;
    instrument.divisions = { { "Upper", 36, 96, {} }, { "Pedal", 36, 65, {} } };
    auto& bus = instrument.mixingBuses.emplace_back();
    bus.name = "Wire";
    bus.kind = BusKind::passive;
    bus.loadOhms = 10e3;
    auto& preamp = instrument.preamps.emplace_back();
    preamp.bus = "Wire";
    preamp.stages.emplace_back();
    preamp.stages.back().name = "Gain";
    preamp.stages.back().coupling = Coupling { 1e-6, 47e3 };
    for (const std::string name : { "First", "Second" })
    {
        auto& stop = instrument.stops.emplace_back();
        stop.name = name;
        stop.division = "Upper";
        stop.bus = "Wire";
        stop.drawn = true;
    }
    return instrument;
}

} // namespace

TEST (HeadroomRemarks, HeldKeysAreCountedByDivision)
{
    EXPECT_EQ (heldWords ({ { "Upper", { 60, 64 }, {}, false, false }, { "Pedal", { 36 }, {}, false, true } }),
               "2 keys of \"Upper\" and all 1 key of \"Pedal\" held");
}

TEST (HeadroomRemarks, SilentStopsBesideTheirReason)
{
    EXPECT_EQ (headroomRemarks (wire(), {}, {}), Sentences {});
    EXPECT_EQ (headroomRemarks (wire(), {}, { { 0, Silence::noKey }, { 1, Silence::noKey } }),
               Sentences { "Drawn but silent, as no key of \"Upper\" sounds: \"First\" and \"Second\"." });
    EXPECT_EQ (headroomRemarks (wire(), {}, { { 0, Silence::blank }, { 1, Silence::noGenerator } }).size(), 2U);
    EXPECT_THROW (requireAnySound (wire(), { { 0, Silence::blank }, { 1, Silence::noKey } }), Error);
    EXPECT_NO_THROW (requireAnySound (wire(), { { 0, Silence::noKey } }));
}

TEST (HeadroomRemarks, KeysLeftAwayAndCouplersThatPlayNothing)
{
    auto organ = wire();
    organ.couplers = { { "Pedal to Upper", "Upper", "Pedal", 0, true },
                       { "Upper to Pedal", "Pedal", "Upper", 0, true } };
    EXPECT_EQ (
        headroomRemarks (organ, { { "Upper", { 60 }, { 20, 21 }, false, false } }, {}),
        (Sentences { "Left away on \"Upper\", whose compass does not have them: G#0 and A0.",
                     "The coupler \"Upper to Pedal\" plays nothing, as no key of \"Pedal\" is held; hold them with "
                     "--division." }));
}

TEST (HeadroomRemarks, ALoadThatCannotHoldTheInputBehindIt)
{
    auto organ = wire();
    organ.mixingBuses.front().loadOhms = 100e3;
    const auto remarks = headroomRemarks (organ, {}, {});
    ASSERT_EQ (remarks.size(), 1U);
    EXPECT_NE (remarks.front().find ("\"Wire\" is told too high"), std::string::npos) << remarks.front();
    for (StopTablet& stop : organ.stops)
        stop.drawn = false;
    EXPECT_EQ (headroomRemarks (organ, {}, {}), Sentences {}) << "nothing is told of this bus";
}

} // namespace stopwright

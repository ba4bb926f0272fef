// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/RailWords.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

StopTablet tablet()
{
    StopTablet stop;
    stop.name = "Krummhorn 8";
    stop.division = "Upper manual";
    stop.cardFile = "Krummhorn8.json";
    stop.bus = "Upper reeds";
    stop.mixingOhms = 100e3;
    return stop;
}

} // namespace

TEST (RailWords, ATabletSaysWhatItIs)
{
    auto stop = tablet();
    EXPECT_EQ (RailWords::note (stop, false, true), "");
    stop.proposed = true;
    EXPECT_EQ (RailWords::note (stop, true, true), "in hand, proposed");
    EXPECT_EQ (RailWords::note (stop, false, false), "proposed, cannot sound");
    stop.cardFile.clear();
    EXPECT_EQ (RailWords::note (stop, false, false), "proposed, blank");
}

TEST (RailWords, TheLessonNamesBusResistorAndWhatARetiredStopLeaves)
{
    Instrument instrument;
    instrument.mixingBuses.push_back ({});
    auto stop = tablet();
    const auto grounded = RailWords::lesson (instrument, stop);
    for (const auto* words : { "Upper manual", "100k", "Upper reeds", "goes to common" })
        EXPECT_TRUE (grounded.contains (words)) << words;
    EXPECT_FALSE (grounded.contains ("inverted"));

    stop.whenRetired = WhenRetired::open;
    stop.polarity = -1;
    const auto open = RailWords::lesson (instrument, stop);
    EXPECT_TRUE (open.contains ("hangs free"));
    EXPECT_TRUE (open.contains ("inverted"));

    stop.cardFile.clear();
    EXPECT_TRUE (RailWords::lesson (instrument, stop).contains ("blank"));
}

TEST (RailWords, TheBusIsShortUnderTheHeadingOfItsDivision)
{
    auto stop = tablet();
    EXPECT_EQ (RailWords::shortBus (stop), "reeds");
    stop.division = "Lower manual";
    EXPECT_EQ (RailWords::shortBus (stop), "Upper reeds"); // not of its division
    stop.bus = "Lower";
    EXPECT_EQ (RailWords::shortBus (stop), "Lower"); // nothing would be left
    stop.bus = "Main";
    EXPECT_EQ (RailWords::shortBus (stop), "Main");
    stop.bus.clear();
    EXPECT_EQ (RailWords::shortBus (stop), "");
}

TEST (RailWords, CouplersAndOutletsAreToldApart)
{
    EXPECT_TRUE (
        RailWords::lesson (Coupler { "II/I", "Lower", "Upper", 0, false }).contains ("Lower play Upper as well"));
    EXPECT_TRUE (RailWords::lesson (Coupler { "4", "Upper", "Upper", 1, false }).contains ("an octave up"));
    EXPECT_TRUE (RailWords::lesson (Coupler { "16", "Upper", "Upper", -1, false }).contains ("an octave down"));

    Outlet outlet;
    outlet.name = "Echo";
    outlet.kind = OutletKind::tremulant;
    EXPECT_EQ (RailWords::switchName (outlet), "Echo");
    EXPECT_TRUE (RailWords::lesson (outlet).contains ("6.0 times a second"));
    outlet.kind = OutletKind::rotary;
    EXPECT_EQ (RailWords::switchName (outlet), "Echo fast");
}

} // namespace stopwright

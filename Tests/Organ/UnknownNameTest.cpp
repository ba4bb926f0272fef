// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/UnknownName.h"

#include "Units/Error.h"

#include <gtest/gtest.h>

#include <array>

namespace stopwright
{

namespace
{

std::string sentenceOf (const Instrument& instrument, std::string_view name)
{
    try
    {
        refuseStop (instrument, name);
    }
    catch (const Error& fault)
    {
        return fault.what();
    }
}

StopTablet tablet (const std::string& name, const std::string& cardFile)
{
    StopTablet stop;
    stop.name = name;
    stop.cardFile = cardFile;
    return stop;
}

} // namespace

TEST (UnknownName, SaysWhichThereAreAndWhichIsNearest)
{
    constexpr std::array<std::string_view, 3> names { "Oboe 8", "String 8", "Vox humana 8" };
    EXPECT_EQ (unknownNameWords ("stop", "Obo 8", names),
               "There is no stop \"Obo 8\" in the instrument; did you mean \"Oboe 8\"? It has \"Oboe 8\", \"String 8\" "
               "and \"Vox humana 8\".");
    EXPECT_EQ (unknownNameWords ("stop", "Kinura 8", std::span (names).first (1)),
               "There is no stop \"Kinura 8\" in the instrument; it has \"Oboe 8\".");
}

TEST (UnknownName, SaysWhenThereAreNone)
{
    EXPECT_EQ (unknownNameWords ("stop", "Oboe 8", {}),
               "There is no stop \"Oboe 8\" in the instrument; it has no stops yet, so add one to its document first.");
    EXPECT_NE (sentenceOf ({}, "Oboe 8").find ("it has no stops yet"), std::string::npos);
}

TEST (UnknownName, KnowsBlankTabletsAndCouplers)
{
    Instrument instrument;
    instrument.stops = { tablet ("Oboe 8", "oboe.json"), tablet ("Blank", "") };
    instrument.couplers.emplace_back();
    instrument.couplers.back().name = "Lower to Upper";
    EXPECT_EQ (sentenceOf (instrument, "Blank"),
               "The tablet Blank is blank: it names no card, so it has no tone; give it a card in the instrument.");
    EXPECT_EQ (sentenceOf (instrument, "Lower to Upper"),
               "\"Lower to Upper\" is a coupler, which has no tone of its own; name a stop of the instrument: it has "
               "\"Oboe 8\".");
    EXPECT_EQ (sentenceOf (instrument, "Flute 8"), "There is no stop \"Flute 8\" in the instrument; it has \"Oboe 8\".")
        << "a blank tablet is not offered";
}

} // namespace stopwright

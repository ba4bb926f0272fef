// SPDX-License-Identifier: GPL-3.0-or-later
//
// BenchSession with a whole instrument: what is drawn, what is in hand, and what is heard of a change.
#include "Bench/OrganSession.h"
#include "Organ/CardDocument.h"
#include "Organ/InstrumentDocument.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <fstream>

namespace stopwright
{

namespace
{

using SessionOrganTest = OrganSession;

} // namespace

TEST_F (SessionOrganTest, TheDemonstrationOrganOpensWithTheProposedStopAlone)
{
    for (const bool isAgain : { false, true })
    {
        session_.open (preset ("LarkfieldOrgan.json"));
        const auto& stops = session_.document().instrument->stops;
        EXPECT_EQ (std::ranges::count (stops, true, &StopTablet::drawn), 1) << isAgain;
        EXPECT_TRUE (session_.document().stopInHand()->drawn);
        EXPECT_EQ (session_.document().stopInHand()->name, "Krummhorn 8");
        session_.draw (stop ("Stopped flute 8"), true); // playing: not what it opens with again
        session_.chooseStop (stop ("Stopped flute 8"));
    }
}

TEST_F (SessionOrganTest, OpensWithTheTabletsThatTheDocumentSaysAreDrawn)
{
    change ("LarkfieldOrgan.json", R"("card": "StoppedFlute8.json",)",
            R"("card": "StoppedFlute8.json", "drawn": true,)");
    session_.open (preset ("LarkfieldOrgan.json"));
    const auto& stops = session_.document().instrument->stops;
    EXPECT_EQ (std::ranges::count (stops, true, &StopTablet::drawn), 2);
    EXPECT_TRUE (stops[static_cast<std::size_t> (stop ("Stopped flute 8"))].drawn);
    EXPECT_TRUE (session_.openingNote().empty()) << session_.openingNote();
    EXPECT_EQ (session_.referenceName(), "Krummhorn 8");

    engine().key (60, true);
    const double both = settledRms();
    session_.draw (stop ("Stopped flute 8"), false);
    EXPECT_LT (settledRms(), 0.98 * both);
}

TEST_F (SessionOrganTest, OneKeyOfTheStopInHandAloneSoundsAtTheListeningLevel)
{
    engine().key (60, true, upper);
    EXPECT_NEAR (toDecibels (settledRms()), -30.0, 0.5);
}

TEST_F (SessionOrganTest, DrawingIsHeardAndHasNoPartInTheHistory)
{
    engine().key (60, true, lower);
    EXPECT_LT (settledRms(), 1e-5);
    session_.draw (stop ("Trumpet 8"), true);
    EXPECT_GT (settledRms(), 1e-3);
    EXPECT_FALSE (session_.history().canUndo());
    EXPECT_FALSE (session_.document().isUnsaved());
    session_.retireAll();
    EXPECT_LT (settledRms(), 1e-5);
}

TEST_F (SessionOrganTest, CouplersPlayAnotherDivision)
{
    engine().key (60, true, lower);
    EXPECT_LT (settledRms(), 1e-5);
    session_.drawCoupler (0, true); // upper to lower
    EXPECT_GT (settledRms(), 1e-3);
    session_.retireAll();
    session_.draw (stop ("Krummhorn 8"), true);
    EXPECT_LT (settledRms(), 1e-5); // the coupler was retired too
}

TEST_F (SessionOrganTest, TheTremulantSwingsItsOutlet)
{
    drawOnly ("Stopped flute 8");
    engine().key (60, true, upper);
    play (0.5);
    const auto swing = [this]
    {
        double lowest = 1e9;
        double highest = 0.0;
        for (int piece = 0; piece < 20; ++piece)
        {
            double sum = 0.0;
            for (const double sample : play (0.02))
                sum += sample * sample;
            lowest = std::min (lowest, sum);
            highest = std::max (highest, sum);
        }
        return highest / lowest;
    };
    EXPECT_LT (swing(), 1.2);
    session_.switchOutlet (1, true);
    play (0.5);
    EXPECT_GT (swing(), 1.8); // depth 0.3: power (1.3 / 0.7)^2 = 3.4, less what a piece averages
}

TEST_F (SessionOrganTest, AnotherStopInHandLeavesTheSoundAsItIs)
{
    engine().key (60, true, upper);
    const double before = settledRms();
    session_.chooseStop (stop ("Oboe 8"));
    EXPECT_EQ (session_.card().name, "Oboe 8");
    EXPECT_TRUE (session_.document().instrument->stops[static_cast<std::size_t> (stop ("Krummhorn 8"))].drawn);
    double lowest = 1e9;
    for (int piece = 0; piece < 20; ++piece) // through the change too
    {
        double sum = 0.0;
        const auto played = play (0.02);
        for (const double sample : played)
            sum += sample * sample;
        lowest = std::min (lowest, std::sqrt (sum / static_cast<double> (played.size())));
    }
    EXPECT_GT (lowest, 0.8 * before);
    EXPECT_NEAR (settledRms() / before, 1.0, 0.01);
}

TEST_F (SessionOrganTest, OnlyTheStopInHandIsTurned)
{
    session_.chooseStop (stop ("Oboe 8"));
    engine().key (60, true, upper);
    const double before = settledRms(); // of the Krummhorn, which is drawn
    const auto parts = session_.card().parts;
    for (const auto& part : parts)
    {
        if (std::holds_alternative<Resistor> (part.value))
            turn (part.name, 100.0);
    }
    EXPECT_NEAR (settledRms() / before, 1.0, 0.03);
    drawOnly ("Oboe 8");
    const double turned = settledRms();
    while (session_.history().canUndo())
        session_.undo();
    EXPECT_GT (std::abs (toDecibels (settledRms() / turned)), 1.0);
}

TEST_F (SessionOrganTest, AnEditIsHeardAndUndoneInCompany)
{
    session_.draw (stop ("Stopped flute 8"), true);
    engine().key (60, true, upper);
    const double before = settledRms();
    session_.turn ({ CardKnob::Place::tapLevel, "Square 8", KnobKind::value }, 10.0); // ten times the Krummhorn's reeds
    EXPECT_GT (toDecibels (settledRms() / before), 3.0);
    session_.undo();
    EXPECT_NEAR (settledRms() / before, 1.0, 0.01);
}

TEST_F (SessionOrganTest, WhatIsDrawnOutlastsARebuild)
{
    session_.draw (stop ("Stopped flute 8"), true);
    session_.chooseStop (stop ("Stopped flute 8"));
    session_.draw (stop ("Krummhorn 8"), false);
    session_.chooseStop (stop ("Krummhorn 8")); // built anew each time
    engine().key (60, true, upper);
    const double flute = settledRms();
    EXPECT_GT (flute, 1e-3);
    session_.draw (stop ("Stopped flute 8"), false);
    EXPECT_LT (settledRms(), 1e-5);
}

TEST_F (SessionOrganTest, SavedChangesStayInTheSoundWhenAnotherStopIsTaken)
{
    engine().key (60, true, upper);
    turn ("R5", 1e3);
    const double turned = settledRms();
    session_.save();
    session_.chooseStop (stop ("Oboe 8"));
    EXPECT_NEAR (settledRms() / turned, 1.0, 0.01);
}

TEST_F (SessionOrganTest, TheMixingResistorIsTurnedUndoneAndSavedWithTheInstrument)
{
    const CardKnob mixing { CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value };
    engine().key (60, true, upper);
    const double before = settledRms();
    EXPECT_EQ (session_.value (mixing), 100e3);
    session_.turn (mixing, 330e3);
    EXPECT_LT (toDecibels (settledRms() / before), -6.0); // towards the bus, a third of the current
    EXPECT_TRUE (session_.document().isUnsaved());
    EXPECT_EQ (session_.history().undoName(), "Krummhorn 8 mixing to 330k");
    session_.undo();
    EXPECT_NEAR (settledRms() / before, 1.0, 0.01);
    EXPECT_FALSE (session_.document().isUnsaved());
    session_.redo();

    const auto card = cardText (readCard (preset ("Krummhorn8.json")));
    session_.draw (stop ("Oboe 8"), true); // playing: is not written
    session_.save();
    EXPECT_FALSE (session_.document().isUnsaved());
    const auto saved = readInstrument (preset ("LarkfieldOrgan.json"));
    const auto& stops = saved.stops;
    EXPECT_EQ (stops[static_cast<std::size_t> (stop ("Krummhorn 8"))].mixingOhms, 330e3);
    EXPECT_FALSE (stops[static_cast<std::size_t> (stop ("Oboe 8"))].drawn);
    EXPECT_EQ (cardText (readCard (preset ("Krummhorn8.json"))), card);
}

TEST_F (SessionOrganTest, ATabletThatIsGoneFromTheFileIsSaid)
{
    session_.turn ({ CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value }, 330e3);
    change ("LarkfieldOrgan.json", "\"tablet\": \"Krummhorn 8\"", "\"tablet\": \"Crumhorn 8\"");
    EXPECT_THROW (session_.save(), Error);
    EXPECT_TRUE (session_.document().isUnsaved());
}

TEST_F (SessionOrganTest, ABlankTabletSaysSo)
{
    change ("LarkfieldOrgan.json", R"("card": "Oboe8.json", )", "");
    session_.open (preset ("LarkfieldOrgan.json"));
    EXPECT_FALSE (session_.canSound (stop ("Oboe 8")));
    try
    {
        session_.draw (stop ("Oboe 8"), true);
        FAIL() << "a blank tablet was drawn";
    }
    catch (const Error& error)
    {
        EXPECT_NE (std::string (error.what()).find ("Oboe 8"), std::string::npos);
        EXPECT_NE (std::string (error.what()).find ("blank"), std::string::npos);
    }
}

TEST_F (SessionOrganTest, ABrokenNeighbourIsSaidAndTheRestPlays)
{
    std::ofstream (preset ("Oboe8.json")) << "no card";
    change ("Trumpet8.json", "\"output\": \"", "\"output\": \"nowhere");
    session_.open (preset ("LarkfieldOrgan.json"));
    EXPECT_NE (session_.openingNote().find ("Oboe8.json"), std::string::npos) << session_.openingNote();
    EXPECT_NE (session_.openingNote().find ("1 more"), std::string::npos) << session_.openingNote();
    EXPECT_FALSE (session_.canSound (stop ("Oboe 8")));
    EXPECT_FALSE (session_.canSound (stop ("Trumpet 8")));
    EXPECT_THROW (session_.draw (stop ("Trumpet 8"), true), Error);
    engine().key (60, true, upper);
    EXPECT_GT (settledRms(), 1e-3);
}

TEST_F (SessionOrganTest, ACardAloneHasNoRail)
{
    session_.open (preset ("Oboe8.json"));
    EXPECT_FALSE (session_.canSound (0));
    EXPECT_NO_THROW (session_.draw (0, true));
    EXPECT_NO_THROW (session_.retireAll());
    EXPECT_EQ (session_.referenceName(), "Oboe 8");
    engine().key (60, true);
    EXPECT_NEAR (toDecibels (settledRms()), -30.0, 0.5);
}

TEST_F (SessionOrganTest, ChannelsAreThoseOfTheDivisions)
{
    EXPECT_EQ (session_.document().midiChannels (0), 0b001U);
    EXPECT_EQ (session_.document().midiChannels (2), 0b100U);
    change ("LarkfieldOrgan.json", R"(, "midiChannel": 3)", "");
    session_.open (preset ("LarkfieldOrgan.json"));
    EXPECT_EQ (session_.document().midiChannels (2), 0xffffU & ~0b011U); // what the others do not claim
    session_.open (preset ("Oboe8.json"));
    EXPECT_EQ (session_.document().midiChannels (0), 0xffffU);
}

} // namespace stopwright

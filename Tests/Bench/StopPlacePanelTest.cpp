// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/StopPlacePanel.h"

#include "Bench/BenchFixture.h"
#include "Bench/ChangesPanel.h"
#include "Bench/Lettering.h"
#include "Organ/InstrumentDocument.h"

#include <algorithm>

namespace stopwright
{

namespace
{

class StopPlacePanelTest : public BenchFixture
{
protected:
    StopPlacePanel& place() { return view_->place(); }

    std::string otherBus() const
    {
        const auto& buses = session_.document().instrument->mixingBuses;
        const auto& present = session_.document().stopInHand()->bus;
        return std::ranges::find_if (buses, [&] (const MixingBus& bus) { return bus.name != present; })->name;
    }
};

} // namespace

TEST_F (StopPlacePanelTest, TellsLevelAndEffectOfTheStopInHand)
{
    openView();
    session_.chooseStop (stop ("Oboe 8"));
    session_.chooseStop (stop ("Krummhorn 8"));
    EXPECT_TRUE (place().lines()[0].contains ("working out")) << "no numbers of another stop";
    place().finish();
    EXPECT_TRUE (place().lines()[0].contains ("dB(A)")) << place().lines().joinIntoString ("|");
    EXPECT_GE (place().lines().size(), 3);
    const auto before = place().lines()[0];
    session_.turn ({ CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value }, 330e3);
    place().finish();
    EXPECT_NE (place().lines()[0], before);
}

TEST_F (StopPlacePanelTest, MovingToAnotherBusStandsInTheListAndIsPutBack)
{
    openView();
    const auto before = instrumentText (*session_.document().instrument);
    place().bus().onChoose (otherBus());
    place().retired().onChoose ("open");
    EXPECT_EQ (place().changes().getButtonText(), "2 changes at the organ");

    ChangesPanel list (session_);
    ASSERT_EQ (list.alterations().size(), 2U);
    EXPECT_NE (list.alterations().front().words.find ("Krummhorn 8"), std::string::npos);
    list.putBack (0);
    EXPECT_EQ (place().changes().getButtonText(), "1 change at the organ");
    session_.undo();
    EXPECT_EQ (place().changes().getButtonText(), "2 changes at the organ");
    session_.undo();
    session_.undo();
    EXPECT_EQ (place().changes().getButtonText(), "As found");
    EXPECT_EQ (instrumentText (*session_.document().instrument), before);
    runMessages (20);
}

TEST_F (StopPlacePanelTest, AMixingResistorThatWasTurnedIsAChange)
{
    openView();
    session_.turn ({ CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value }, 330e3);
    EXPECT_EQ (place().changes().getButtonText(), "1 change at the organ");
    session_.turn ({ CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value }, 100e3);
    EXPECT_EQ (place().changes().getButtonText(), "As found");
}

TEST_F (StopPlacePanelTest, WorkOnACardIsNoChangeAtTheOrganAndTheWordsDoNotSayOtherwise)
{
    openView();
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 10e3);
    ASSERT_TRUE (session_.document().isUnsaved());
    EXPECT_EQ (place().changes().getButtonText(), "As found");
    const auto lesson = place().changes().getTooltip();
    for (const auto* word : { "Counted", "bus", "mixing resistor", "taps", "Work on a card is not", "Undo" })
        EXPECT_TRUE (lesson.contains (word)) << word;
}

TEST_F (StopPlacePanelTest, TheWordsOfTheButtonHaveRoomInANarrowColumn)
{
    for (const auto& [width, height] : { std::pair { 900, 600 }, std::pair { 1200, 800 }, std::pair { 1680, 1050 } })
        for (const float scale : { 1.0f, 1.5f })
        {
            settings_->setTextScale (scale);
            openView (width, height);
            EXPECT_LE (Lettering::widthOf (Lettering::body(), "12 changes at the organ") + Lettering::px (16.0f),
                       place().changes().getWidth())
                << width << " at " << scale;
        }
}

TEST_F (StopPlacePanelTest, ALateAnswerOfAnotherDocumentIsNotShown)
{
    openView();
    session_.turn ({ CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value }, 1e6);
    place().finish();
    const auto soft = place().lines();
    session_.turn ({ CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value }, 1.1e6);
    session_.turn ({ CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value }, 1e6);
    juce::Thread::sleep (1500);                     // it is worked out, and waits to be told
    session_.open (preset ("LarkfieldOrgan.json")); // the stop has the same name there, and 100k
    EXPECT_TRUE (place().lines()[0].contains ("working out"));
    for (int piece = 0; piece < 10; ++piece)
    {
        runMessages (1);
        EXPECT_NE (place().lines(), soft);
    }
    place().finish();
    EXPECT_TRUE (place().lines()[0].contains ("dB(A)"));
    EXPECT_NE (place().lines(), soft);
}

TEST_F (StopPlacePanelTest, ANeighbourThatWasJustChosenIsWorkedOutFirst)
{
    openView();
    place().finish();
    const auto before = place().lines();
    place().neighbour().onChoose ("Oboe 8");
    EXPECT_TRUE (place().lines()[0].contains ("working out")) << "no numbers against another stop";
    place().finish();
    EXPECT_NE (place().lines(), before);
}

TEST_F (StopPlacePanelTest, ACardAloneHasNoPlace)
{
    openView();
    session_.open (preset ("Oboe8.json"));
    EXPECT_FALSE (place().isShowing());
    EXPECT_EQ (place().mixing(), nullptr);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/StopPlacePanel.h"

#include "Bench/BenchFixture.h"
#include "Bench/ChangesPanel.h"
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
    EXPECT_EQ (place().changes().getButtonText(), "2 changes");

    ChangesPanel list (session_);
    ASSERT_EQ (list.alterations().size(), 2U);
    EXPECT_NE (list.alterations().front().words.find ("Krummhorn 8"), std::string::npos);
    list.putBack (0);
    EXPECT_EQ (place().changes().getButtonText(), "1 change");
    session_.undo();
    EXPECT_EQ (place().changes().getButtonText(), "2 changes");
    session_.undo();
    session_.undo();
    EXPECT_EQ (place().changes().getButtonText(), "No changes");
    EXPECT_EQ (instrumentText (*session_.document().instrument), before);
    runMessages (20);
}

TEST_F (StopPlacePanelTest, AMixingResistorThatWasTurnedIsAChange)
{
    openView();
    session_.turn ({ CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value }, 330e3);
    EXPECT_EQ (place().changes().getButtonText(), "1 change");
    session_.turn ({ CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value }, 100e3);
    EXPECT_EQ (place().changes().getButtonText(), "No changes");
}

TEST_F (StopPlacePanelTest, ACardAloneHasNoPlace)
{
    openView();
    session_.open (preset ("Oboe8.json"));
    EXPECT_FALSE (place().isShowing());
    EXPECT_EQ (place().mixing(), nullptr);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
//
// BenchSession over several stops: what stays unsaved where, what is saved, and networks that cannot be computed.
#include "Bench/OrganSession.h"
#include "Organ/CardDocument.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

using SessionWorkTest = OrganSession;

} // namespace

TEST_F (SessionWorkTest, UnsavedChangesStayWhenAnotherStopIsTakenAndUndoFindsThem)
{
    engine().key (60, true, upper);
    const double before = settledRms();
    const double saved = value ("R5");
    turn ("R5", 1e3);
    const double turned = settledRms();
    EXPECT_LT (turned, 0.7 * before);
    session_.chooseStop (stop ("Oboe 8"));
    EXPECT_NEAR (settledRms() / turned, 1.0, 0.01);
    EXPECT_TRUE (session_.document().isUnsaved());
    EXPECT_EQ (session_.document().unsavedNames(), std::vector<std::string> { "Krummhorn 8" });

    session_.undo(); // goes to where the change was
    EXPECT_EQ (session_.card().name, "Krummhorn 8");
    EXPECT_EQ (value ("R5"), saved);
    EXPECT_NEAR (settledRms() / before, 1.0, 0.01);
    EXPECT_FALSE (session_.document().isUnsaved());
}

TEST_F (SessionWorkTest, SaveWritesEveryStopThatWasChanged)
{
    turn ("R5", 1e3);
    session_.chooseStop (stop ("Oboe 8"));
    const auto& tap = session_.card().taps.front().name;
    session_.turn ({ CardKnob::Place::tapLevel, tap, KnobKind::value }, 0.123);
    session_.save();
    EXPECT_FALSE (session_.document().isUnsaved());
    EXPECT_EQ (valueOf (readCard (preset ("Krummhorn8.json")), { CardKnob::Place::part, "R5", KnobKind::value }), 1e3);
    EXPECT_EQ (readCard (preset ("Oboe8.json")).taps.front().voltsPeakToPeak, 0.123);
}

TEST_F (SessionWorkTest, UndoAfterWorkWasTakenBackLeadsToWhatIsOnDisk)
{
    session_.chooseStop (stop ("Oboe 8"));
    const auto saved = session_.card();
    session_.turn ({ CardKnob::Place::tapLevel, saved.taps.front().name, KnobKind::value }, 0.123);
    const auto work = session_.document().work();
    session_.open (preset ("LarkfieldOrgan.json")); // as the next run does, with another stop in hand
    session_.restore (work);
    EXPECT_EQ (session_.card().taps.front().voltsPeakToPeak, 0.123);
    EXPECT_TRUE (session_.document().isUnsaved());
    session_.undo();
    EXPECT_FALSE (session_.document().isUnsaved());
    session_.chooseStop (stop ("Oboe 8"));
    EXPECT_TRUE (session_.card() == saved);
}

TEST_F (SessionWorkTest, AnUnsavedMixingResistorStaysWhenAnotherStopIsTaken)
{
    const CardKnob mixing { CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value };
    engine().key (60, true, upper);
    const double before = settledRms();
    session_.turn (mixing, 330e3);
    const double turned = settledRms();
    EXPECT_LT (turned, 0.7 * before);
    session_.chooseStop (stop ("Oboe 8"));
    EXPECT_NEAR (settledRms() / turned, 1.0, 0.01);
    session_.chooseStop (stop ("Krummhorn 8"));
    EXPECT_EQ (session_.value (mixing), 330e3);
    EXPECT_EQ (session_.savedValue (mixing), 100e3);
    EXPECT_TRUE (session_.document().isInstrumentUnsaved());
}

TEST_F (SessionWorkTest, AStopMovedToAnotherBusSoundsThereAndIsUndone)
{
    engine().key (60, true, upper);
    const double before = settledRms();
    const auto& buses = session_.document().instrument->mixingBuses;
    const auto from = session_.document().stopInHand()->bus;
    const auto other = std::ranges::find_if (buses, [&] (const MixingBus& bus) { return bus.name != from; })->name;
    session_.edit ("Krummhorn 8 to " + other, [&] (BenchWork& work)
                   { work.instrument->stops[static_cast<std::size_t> (work.stopIndex)].bus = other; });
    EXPECT_EQ (session_.document().stopInHand()->bus, other);
    EXPECT_GT (std::abs (toDecibels (settledRms() / before)), 0.05);
    session_.undo();
    EXPECT_EQ (session_.document().stopInHand()->bus, from);
    EXPECT_NEAR (settledRms() / before, 1.0, 0.01);
    EXPECT_FALSE (session_.document().isUnsaved());
}

TEST_F (SessionWorkTest, ANetworkThatCannotBeComputedIsKeptAndTheLastOneSounds)
{
    engine().key (60, true, upper);
    const double before = settledRms();
    session_.editCard ("output lost", [] (Card& card) { card.output = "nowhere"; });
    EXPECT_TRUE (session_.isUnsound());
    EXPECT_FALSE (session_.faults().front().sentence.empty());
    EXPECT_EQ (session_.card().output, "nowhere");
    EXPECT_NEAR (settledRms() / before, 1.0, 0.01);

    turn ("R5", 1e3); // is noted, and heard as soon as the network is whole
    EXPECT_NEAR (settledRms() / before, 1.0, 0.01);
    session_.chooseStop (stop ("Oboe 8"));
    EXPECT_NEAR (settledRms() / before, 1.0, 0.01);
    session_.chooseStop (stop ("Krummhorn 8"));
    session_.editCard ("output found", [] (Card& card) { card.output = "out"; });
    EXPECT_FALSE (session_.isUnsound());
    EXPECT_LT (settledRms(), 0.7 * before);
}

TEST_F (SessionWorkTest, AStopThatCannotBeComputedIsOpenedSilentWithItsFaults)
{
    change ("Krummhorn8.json", "\"output\": \"", "\"output\": \"nowhere");
    session_.open (preset ("LarkfieldOrgan.json"));
    EXPECT_TRUE (session_.isUnsound());
    EXPECT_NE (session_.referenceName(), "Krummhorn 8");
    session_.editCard ("output found", [] (Card& card) { card.output = "out"; });
    drawOnly ("Krummhorn 8");
    engine().key (60, true, upper);
    EXPECT_GT (settledRms(), 1e-3);

    session_.open (preset ("Krummhorn8.json")); // alone
    EXPECT_TRUE (session_.isUnsound());
    engine().key (60, true);
    EXPECT_EQ (settledRms(), 0.0);
    session_.editCard ("output found", [] (Card& card) { card.output = "out"; });
    EXPECT_NEAR (toDecibels (settledRms()), -30.0, 0.5);
}

} // namespace stopwright

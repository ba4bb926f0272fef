// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StageReading.h"

#include "Organ/TestOrgan.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stopwright::test
{
namespace
{

TestOrgan drawnLarkfield (const std::vector<std::string>& stops)
{
    auto organ = larkfield();
    for (auto& stop : organ.instrument.stops)
        stop.drawn = std::ranges::find (stops, stop.name) != stops.end();
    return organ;
}

TEST (StageReading, IsTheHeadroomOfTenNotes)
{
    const auto organ = drawnLarkfield ({ "Krummhorn 8" });
    const auto& stops = organ.instrument.stops;
    const auto division = std::ranges::find (stops, std::string ("Krummhorn 8"), &StopTablet::name)->division;
    const auto reading = stageReading (organ.instrument, organ.cards, "no such keyboard", StageKeys::tenNotes);
    EXPECT_EQ (reading.division, division);
    ASSERT_EQ (reading.held.size(), 10u);
    HeadroomRequest request;
    request.held = reading.held;
    const auto stages = headroomOf (organ.instrument, organ.cards, request);
    ASSERT_EQ (reading.stages.size(), stages.size());
    for (std::size_t stage = 0; stage < stages.size(); ++stage)
        EXPECT_DOUBLE_EQ (reading.stages[stage].rmsVolts, stages[stage].rmsVolts);
}

TEST (StageReading, WhatCannotSoundIsSilentAndNotRefused)
{
    auto organ = drawnLarkfield ({ "Krummhorn 8", "Oboe 8" });
    const auto& stops = organ.instrument.stops;
    const auto oboe = std::ranges::find (stops, std::string ("Oboe 8"), &StopTablet::name) - stops.begin();
    organ.cards.ofStops[static_cast<std::size_t> (oboe)].reset();
    organ.cards.errors.emplace_back ("Oboe8.json: no such file");
    const auto reading = stageReading (organ.instrument, organ.cards, {}, StageKeys::tenNotes);
    EXPECT_EQ (reading.drawn, std::vector<std::string> { "Krummhorn 8" });
}

/// What is asked for is counted, which says the same on any machine.
TEST (StageReading, OneThatIsNotWantedAnyMoreStopsAtTheNextQuestion)
{
    const auto organ = drawnLarkfield ({ "Krummhorn 8", "Trumpet 8", "Stopped flute 8", "Diapason 8" });
    const auto readUntil = [&] (int answer, int& asked)
    {
        return stageReading (organ.instrument, organ.cards, {}, StageKeys::everyKey,
                             [&asked, answer] { return ++asked == answer; }); // once it said so it is not to be asked
    };
    int whole = 0;
    const auto all = readUntil (-1, whole).stages.size();
    ASSERT_GT (all, 4u);
    EXPECT_GT (whole, 12) << "every pitch class of every bus is a question of its own";
    for (const int answer : { 1, 2, 12, 13, whole / 2, whole })
    {
        int asked = 0;
        const auto stages = readUntil (answer, asked).stages.size();
        EXPECT_EQ (asked, answer);
        EXPECT_LE (stages, all);
        EXPECT_TRUE (answer > 12 || stages == 0) << stages << " stages after " << answer << " questions";
    }
}

TEST (StageReading, AskingChangesNothing)
{
    const auto organ = drawnLarkfield ({ "Krummhorn 8", "Trumpet 8" });
    const auto reading = stageReading (organ.instrument, organ.cards, {}, StageKeys::tenNotes);
    const auto asked = stageReading (organ.instrument, organ.cards, {}, StageKeys::tenNotes, [] { return false; });
    ASSERT_EQ (asked.stages.size(), reading.stages.size());
    for (std::size_t stage = 0; stage < reading.stages.size(); ++stage)
    {
        EXPECT_EQ (asked.stages[stage].rmsVolts, reading.stages[stage].rmsVolts);
        EXPECT_EQ (asked.stages[stage].remedies.size(), reading.stages[stage].remedies.size());
    }
}

TEST (StageReading, NothingDrawnIsRefusedInWords)
{
    const auto organ = drawnLarkfield ({});
    EXPECT_THROW (stageReading (organ.instrument, organ.cards, {}, StageKeys::tenNotes), Error);
}

TEST (StageReading, NamesAStageWithItsPreamp)
{
    StageHeadroom stage;
    stage.name = "Gain";
    EXPECT_EQ (titleOf (stage), "Gain");
    stage.preamp = "Reeds";
    EXPECT_EQ (titleOf (stage), "Reeds: Gain");
}

} // namespace
} // namespace stopwright::test

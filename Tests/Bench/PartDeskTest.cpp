// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchFixture.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// The bench with a card of transistors, diodes and supplies in hand.
class DeviceCardTest : public BenchFixture
{
protected:
    void openFollower()
    {
        openView();
        session_.open (std::filesystem::path (STOPWRIGHT_ROOT) / "Tests/Organ/Documents/good/card-devices.json");
    }

    std::string shown (const std::string& name)
    {
        for (const auto& cell : view_->sheet().desk().restCells())
            if (cell->reading().name == name)
                return cell->reading().number + " " + cell->reading().words;
        return {};
    }
};

} // namespace

TEST_F (DeviceCardTest, ShowsWhereItRests)
{
    openFollower();
    EXPECT_NE (shown ("Q1").find ("active"), std::string::npos) << shown ("Q1");
    EXPECT_FALSE (shown ("node e").empty());
    EXPECT_TRUE (shown ("node 0").empty());
}

// A follower's emitter resistor ten times as large: about a tenth of the current.
TEST_F (DeviceCardTest, ATurnedPartMovesTheRestAndUndoBringsItBack)
{
    openFollower();
    const auto before = shown ("Q1");
    session_.turn ({ CardKnob::Place::part, "R2", KnobKind::value }, 100e3);
    EXPECT_NE (shown ("Q1"), before);
    session_.undo();
    EXPECT_EQ (shown ("Q1"), before);
}

TEST_F (DeviceCardTest, AnotherCardTakesItAway)
{
    openFollower();
    session_.open (preset ("Krummhorn8.json"));
    EXPECT_TRUE (view_->sheet().desk().restCells().empty());
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/WireRouter.h"

#include "Sheet/WireShape.h"

#include <gtest/gtest.h>

namespace stopwright
{

TEST (WireRouter, RunsStraightBetweenTwoPins)
{
    WireGrid grid (12, 5);
    const std::vector<WireNet> nets { { { { 1, 2 }, { 9, 2 } }, {}, {}, {} } };
    LayoutEffort effort;
    ASSERT_TRUE (WireRouter (grid, nets, effort).route());
    const auto shape = wireShape (grid, 0);
    ASSERT_EQ (shape.lines.size(), 1U);
    EXPECT_EQ (shape.lines.front(), (std::vector<GridPoint> { { 1, 2 }, { 9, 2 } }));
    EXPECT_TRUE (shape.dots.empty());
}

TEST (WireRouter, JoinsThreePinsInOneDot)
{
    WireGrid grid (12, 8);
    const std::vector<WireNet> nets { { { { 1, 2 }, { 9, 2 }, { 5, 6 } }, {}, {}, { 2 } } };
    LayoutEffort effort;
    ASSERT_TRUE (WireRouter (grid, nets, effort).route());
    const auto shape = wireShape (grid, 0);
    EXPECT_EQ (shape.lines.size(), 3U);
    EXPECT_EQ (shape.dots.size(), 1U);
}

TEST (WireRouter, GoesRoundWhatIsBlockedAndRoundOtherWires)
{
    WireGrid grid (12, 9);
    for (int y = 0; y < 7; ++y)
        grid.block ({ 5, y });
    const std::vector<WireNet> nets { { { { 1, 2 }, { 9, 2 } }, {}, {}, {} } };
    LayoutEffort effort;
    ASSERT_TRUE (WireRouter (grid, nets, effort).route());
    for (const auto& line : wireShape (grid, 0).lines)
        EXPECT_EQ (line.size(), 4U);
}

TEST (WireRouter, CrossesStraightWhereItMust)
{
    WireGrid grid (9, 9);
    const std::vector<WireNet> nets { { { { 0, 4 }, { 8, 4 } }, {}, {}, {} }, { { { 4, 0 }, { 4, 8 } }, {}, {}, {} } };
    LayoutEffort effort;
    ASSERT_TRUE (WireRouter (grid, nets, effort).route());
    EXPECT_EQ (grid.degree (grid.indexOf ({ 4, 4 }), 0), 2);
    EXPECT_EQ (grid.degree (grid.indexOf ({ 4, 4 }), 1), 2);
    EXPECT_TRUE (wireShape (grid, 0).dots.empty());
}

TEST (WireRouter, SaysWhenThereIsNoWay)
{
    WireGrid grid (12, 5);
    for (int y = 0; y < 5; ++y)
        grid.block ({ 5, y });
    const std::vector<WireNet> nets { { { { 1, 2 }, { 9, 2 } }, {}, {}, {} } };
    LayoutEffort effort;
    EXPECT_FALSE (WireRouter (grid, nets, effort).route());
}

TEST (WireRouter, LooksNoFurtherOnceTheEffortIsSpent)
{
    WireGrid grid (60, 60);
    const std::vector<WireNet> nets { { { { 1, 2 }, { 50, 50 } }, {}, {}, {} } };
    LayoutEffort effort;
    EXPECT_TRUE (WireRouter (grid, nets, effort).route());
    const long needed = LayoutEffort().steps - effort.steps;
    LayoutEffort less { needed / 10 };
    WireGrid other (60, 60);
    EXPECT_FALSE (WireRouter (other, nets, less).route());
    EXPECT_TRUE (less.isSpent());
    EXPECT_GE (less.steps, -1);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/ClippedCurve.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

using Points = std::vector<DrawingPoint>;

// Crossing points: closed form, two straight lines.

TEST (ClippedCurve, EndsWhereItCrossesAnEdge)
{
    const auto pieces = clippedCurve ({ { 0, 5 }, { 10, 25 }, { 20, 25 }, { 30, 5 } }, 0.0, 20.0);
    ASSERT_EQ (pieces.size(), 2u);
    EXPECT_EQ (pieces[0], (Points { { 0, 5 }, { 7.5, 20 } }));
    EXPECT_EQ (pieces[1], (Points { { 22.5, 20 }, { 30, 5 } }));
}

TEST (ClippedCurve, OneStepMayCrossBothEdges)
{
    const auto pieces = clippedCurve ({ { 0, -10 }, { 40, 30 } }, 0.0, 20.0);
    ASSERT_EQ (pieces.size(), 1u);
    EXPECT_EQ (pieces[0], (Points { { 10, 0 }, { 30, 20 } }));
}

TEST (ClippedCurve, LeavesWhatIsWithinAndDropsWhatIsBeyond)
{
    const Points within { { 0, 5 }, { 10, 0 }, { 20, 20 }, { 30, 20 } };
    const auto pieces = clippedCurve (within, 0.0, 20.0);
    ASSERT_EQ (pieces.size(), 1u);
    EXPECT_EQ (pieces[0], within);
    EXPECT_TRUE (clippedCurve ({ { 0, 21 }, { 10, 40 }, { 20, 21 } }, 0.0, 20.0).empty());
    EXPECT_TRUE (clippedCurve ({ { 0, -1 }, { 10, -1 } }, 0.0, 20.0).empty());
    EXPECT_TRUE (clippedCurve ({}, 0.0, 20.0).empty());
}

} // namespace
} // namespace stopwright

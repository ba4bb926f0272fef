// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SchematicLayout.h"
#include "Sheet/SheetCards.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

/// Square 8 - R0 - R2 - R4 along the signal, C1, C3, C5 below; items in that order: tap, R0, C1, R2, C3, R4, C5, output.
class SheetHits : public testing::Test
{
protected:
    SchematicLayout layout_ = layOutSchematic (ladderCard (6));

    std::string nameFrom (std::size_t item, SheetDirection direction) const
    {
        const auto next = layout_.neighbour (item, direction);
        return next ? layout_.items[*next].name : "nothing";
    }
};

} // namespace

TEST_F (SheetHits, FindsEveryItemInItsRingAndItsLabel)
{
    for (std::size_t index = 0; index + 1 < layout_.items.size(); ++index)
    {
        const auto& item = layout_.items[index];
        EXPECT_EQ (layout_.itemAt (item.middle), index);
        EXPECT_EQ (layout_.itemAt ({ item.middle.x + 0.7 * item.ringRadius, item.middle.y - 0.7 * item.ringRadius }),
                   index);
        EXPECT_EQ (layout_.itemAt ({ item.labelBox.x + 1.0, item.labelBox.y + 1.0 }), index);
    }
    EXPECT_EQ (layout_.itemAt ({ 0.0, 0.0 }), std::nullopt);
    EXPECT_EQ (layout_.itemAt (layout_.items.back().middle), std::nullopt); // the output has no knob
}

TEST_F (SheetHits, FindsEveryNodeAtItsProbe)
{
    for (std::size_t index = 0; index < layout_.nodes.size(); ++index)
    {
        const auto probe = layout_.nodes[index].probe;
        EXPECT_EQ (layout_.nodeAt (probe, 0.5), index) << layout_.nodes[index].name;
        EXPECT_EQ (layout_.nodeAt ({ probe.x, probe.y - 4.0 }, 6.0), index) << layout_.nodes[index].name;
    }
    EXPECT_EQ (layout_.nodeAt ({ 0.0, 0.0 }, 6.0), std::nullopt);
}

TEST_F (SheetHits, WalksFromPartToPart)
{
    EXPECT_EQ (nameFrom (0, SheetDirection::right), "R0");
    EXPECT_EQ (nameFrom (1, SheetDirection::right), "R2");
    EXPECT_EQ (nameFrom (3, SheetDirection::left), "R0");
    EXPECT_EQ (nameFrom (0, SheetDirection::left), "nothing");
    EXPECT_EQ (nameFrom (2, SheetDirection::right), "C3");
    EXPECT_EQ (nameFrom (6, SheetDirection::right), "nothing");
    EXPECT_EQ (nameFrom (1, SheetDirection::up), "nothing");
    EXPECT_EQ (nameFrom (1, SheetDirection::down), "C1");
}

} // namespace stopwright

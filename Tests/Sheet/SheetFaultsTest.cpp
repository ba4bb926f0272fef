// SPDX-License-Identifier: GPL-3.0-or-later
//
// The checker of layouts has to see what is spoilt.
#include "Sheet/SheetFaults.h"

#include "Sheet/SheetCards.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stopwright
{

namespace
{

class SheetFaults : public testing::Test
{
protected:
    Card card_ = ladderCard (6);
    SchematicLayout layout_ = layOutSchematic (card_);

    SheetItem& part (std::size_t index) { return layout_.items.at (1 + index); }

    SheetNode& node (std::string_view name)
    {
        return *std::find_if (layout_.nodes.begin(), layout_.nodes.end(),
                              [&] (const SheetNode& candidate) { return candidate.name == name; });
    }

    bool hasFault (const std::string& words) const
    {
        const auto faults = sheetFaults (card_, layout_);
        return std::any_of (faults.begin(), faults.end(),
                            [&] (const std::string& fault) { return fault.find (words) != std::string::npos; });
    }
};

} // namespace

TEST_F (SheetFaults, FindsNoneInASoundSheet)
{
    EXPECT_TRUE (sheetFaults (card_, layout_).empty());
    EXPECT_EQ (crossingsOf (layout_), 0);
}

TEST_F (SheetFaults, FindsAPartThatIsMissingOrThereTwice)
{
    layout_.items.erase (layout_.items.begin() + 1);
    EXPECT_TRUE (hasFault ("number of items"));
    layout_.items.insert (layout_.items.begin(), layout_.items.back());
    EXPECT_TRUE (hasFault ("is there twice"));
}

TEST_F (SheetFaults, FindsPartsOnEachOther)
{
    part (0).middle = part (2).middle;
    part (0).body = part (2).body;
    EXPECT_TRUE (hasFault ("lie on each other"));
    EXPECT_TRUE (hasFault ("overlap"));
}

TEST_F (SheetFaults, FindsLabelsOnLabelsPartsAndWires)
{
    part (0).labelBox = part (2).labelBox;
    EXPECT_TRUE (hasFault ("meets label of"));
    part (0).labelBox = part (2).body;
    EXPECT_TRUE (hasFault ("meets the ring of"));
    node ("n1").label.at = node ("n1").probe;
    EXPECT_TRUE (hasFault ("lies on a wire"));
}

TEST_F (SheetFaults, FindsWiresThatClash)
{
    node ("n1").wires.push_back (node ("n2").wires.front());
    EXPECT_TRUE (hasFault ("clash"));
}

TEST_F (SheetFaults, FindsAWireThroughASymbol)
{
    const auto at = part (0).middle;
    node ("n0").wires.push_back ({ { at.x - 40.0, at.y }, { at.x + 40.0, at.y } });
    EXPECT_TRUE (hasFault ("runs through"));
}

TEST_F (SheetFaults, FindsWiresThatEndNowhereAndLeadsLeftOut)
{
    node ("n1").wires.pop_back();
    EXPECT_TRUE (hasFault ("left out"));
    node ("n2").wires.front().front().x += 3.0;
    EXPECT_TRUE (hasFault ("ends nowhere"));
}

TEST_F (SheetFaults, FindsDotsThatAreWrongOrMissing)
{
    node ("n1").dots.push_back (part (0).terminals.front().at);
    EXPECT_TRUE (hasFault ("is no junction"));
    node ("n1").dots.clear();
    EXPECT_TRUE (hasFault ("has no dot"));
}

TEST_F (SheetFaults, FindsATapOrOutputOutOfPlace)
{
    layout_.items.front().middle.x = layout_.width;
    EXPECT_TRUE (hasFault ("is right of R0"));
    layout_.items.back().middle.x = 0.0;
    EXPECT_TRUE (hasFault ("is right of the output"));
}

TEST_F (SheetFaults, FindsAPartThatDoesNotStandOnCommon)
{
    std::swap (part (1).terminals[0].at, part (1).terminals[1].at);
    EXPECT_TRUE (hasFault ("does not stand on common"));
}

TEST_F (SheetFaults, CountsACrossing)
{
    const auto& wire = node ("n1").wires.front();
    const double x = (wire.front().x + wire.back().x) / 2.0;
    const double y = wire.front().y;
    node ("n2").wires.push_back ({ { x, y - 5.0 }, { x, y + 5.0 } });
    EXPECT_EQ (crossingsOf (layout_), 1);
}

} // namespace stopwright

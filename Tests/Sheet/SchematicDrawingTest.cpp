// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SchematicDrawing.h"

#include "Sheet/SheetCards.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stopwright
{

namespace
{

class SchematicDrawing : public testing::Test
{
protected:
    Card card_ = ladderCard (4);
    SchematicLayout layout_ = layOutSchematic (card_);

    Drawing draw (const SchematicStyle& style = {}) const { return drawSchematic (card_, layout_, style); }

    static std::size_t countOf (const Drawing& drawing, Ink ink)
    {
        return static_cast<std::size_t> (std::count_if (drawing.lines.begin(), drawing.lines.end(),
                                                        [&] (const DrawnLine& line) { return line.ink == ink; }));
    }

    static bool hasText (const Drawing& drawing, const std::string& text)
    {
        return std::any_of (drawing.texts.begin(), drawing.texts.end(),
                            [&] (const DrawnText& line) { return line.text == text; });
    }
};

} // namespace

TEST_F (SchematicDrawing, WritesNamesValuesNodesAndTaps)
{
    const auto drawing = draw();
    for (const auto* text : { "R0", "4k7", "C1", "10n", "n1", "Square 8", "square, 8 ft", "1 V p-p", "output" })
        EXPECT_TRUE (hasText (drawing, text)) << text;
    EXPECT_EQ (drawing.width, layout_.width);
    EXPECT_FALSE (hasText (draw ({ {}, {}, "", false }), "n1"));
}

TEST_F (SchematicDrawing, MarksWhatIsInHand)
{
    const auto plain = draw();
    const auto withPart = draw ({ {}, 1, "", true });
    EXPECT_EQ (withPart.lines.size(), plain.lines.size() + 1); // its ring
    EXPECT_GT (countOf (withPart, Ink::result), countOf (plain, Ink::result));
    const auto withNode = draw ({ {}, {}, "n1", true });
    EXPECT_EQ (withNode.lines.size(), plain.lines.size());
    EXPECT_EQ (countOf (withNode, Ink::result), countOf (plain, Ink::result) + layout_.findNode ("n1")->wires.size());
}

TEST_F (SchematicDrawing, StaysOnTheSheet)
{
    for (const auto& line : draw().lines)
        for (const auto& point : line.points)
        {
            EXPECT_TRUE (point.x >= 0.0 && point.x <= layout_.width);
            EXPECT_TRUE (point.y >= 0.0 && point.y <= layout_.height);
        }
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/WindowPlace.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

using Area = juce::Rectangle<int>;

const Area left (0, 0, 1280, 1024);
const Area right (1280, 0, 1920, 1080);
const juce::Point<int> smallest (900, 600);

Area placed (const Area& wanted, const std::vector<Area>& screens)
{
    return placeOnScreens (wanted, screens, smallest);
}

} // namespace

TEST (WindowPlace, AWindowThatFitsStaysWhereItWas)
{
    EXPECT_EQ (placed ({ 40, 60, 1200, 800 }, { left }), Area (40, 60, 1200, 800));
    EXPECT_EQ (placed ({ 1500, 100, 1000, 700 }, { left, right }), Area (1500, 100, 1000, 700));
}

TEST (WindowPlace, AWindowOfAScreenThatIsGoneComesToTheOneThereIs)
{
    EXPECT_EQ (placed ({ 1500, 100, 1000, 700 }, { left }), Area (280, 100, 1000, 700));
    EXPECT_EQ (placed ({ -3000, -2000, 1000, 700 }, { left, right }), Area (0, 0, 1000, 700));
}

TEST (WindowPlace, AWindowThatIsTooLargeIsCutToTheScreen)
{
    EXPECT_EQ (placed ({ -100, -50, 3000, 2500 }, { left }), left);
    EXPECT_EQ (placed ({ 100000, 100000, 2000000000, 2000000000 }, { left }), left);
}

TEST (WindowPlace, AWindowBetweenTwoScreensGoesToTheOneThatHasMostOfIt)
{
    EXPECT_EQ (placed ({ 1200, 100, 1000, 700 }, { left, right }), Area (1280, 100, 1000, 700));
    EXPECT_EQ (placed ({ 400, 100, 1000, 700 }, { left, right }), Area (280, 100, 1000, 700));
}

TEST (WindowPlace, ItIsNeverSmallerThanItsLayout)
{
    EXPECT_EQ (placed ({ 10, 10, 200, 100 }, { left }), Area (10, 10, 900, 600));
    EXPECT_EQ (placed ({ 10, 10, 1200, 800 }, { Area (0, 0, 800, 480) }), Area (0, 0, 900, 600));
    EXPECT_EQ (placed ({ 10, 10, 1200, 800 }, {}), Area (10, 10, 1200, 800));
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/InkColours.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

/// Relative luminance of sRGB. Source: IEC 61966-2-1; weights of Recommendation ITU-R BT.709.
double luminance (const InkColour& colour)
{
    const auto linear = [] (double part)
    {
        const double value = part / 255.0;
        return value <= 0.04045 ? value / 12.92 : std::pow ((value + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear (colour.red) + 0.7152 * linear (colour.green) + 0.0722 * linear (colour.blue);
}

TEST (InkColours, MixesWithTheSheet)
{
    const auto& inks = InkColours::print();
    EXPECT_EQ (inks.of (Ink::result, 0.0), inks.of (Ink::sheet));
    EXPECT_EQ (hexText (inks.of (Ink::result)), "#0a5a94");
    EXPECT_EQ (hexText (inks.of (Ink::sheet)), "#ffffff");
    EXPECT_EQ (inks.of (Ink::ink, 0.5).red, 0x8d); // half way from 255 to 27
}

TEST (InkColours, WhatIsReadStandsOutFromThePaper)
{
    // WCAG 2.1 asks for a contrast of 4.5 : 1 of text.
    const auto& inks = InkColours::print();
    const double sheet = luminance (inks.of (Ink::sheet)) + 0.05;
    for (const auto ink : { Ink::ink, Ink::faintInk, Ink::result, Ink::target, Ink::notice })
        EXPECT_GT (sheet / (luminance (inks.of (ink)) + 0.05), 4.5) << hexText (inks.of (ink));
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/Spelling.h"

#include <gtest/gtest.h>

#include <array>

namespace stopwright
{

namespace
{

constexpr std::array<std::string_view, 4> words { "resistor", "capacitor", "tolerance", "vpp" };

} // namespace

TEST (Spelling, FindsWhatWasMeant)
{
    EXPECT_EQ (closestWord ("tolerence", words), "tolerance");
    EXPECT_EQ (closestWord ("Resistor", words), "resistor");
    EXPECT_EQ (closestWord ("ressitor", words), "resistor"); // two letters swapped count once
    EXPECT_EQ (closestWord ("vp", words), "vpp");
}

TEST (Spelling, DoesNotGuessWildly)
{
    EXPECT_FALSE (closestWord ("colour", words));
    EXPECT_FALSE (closestWord ("", words));
    EXPECT_FALSE (closestWord (std::string (1000000, 'r'), words));
    EXPECT_FALSE (closestWord ("vx", std::array<std::string_view, 1> { "vpp" }));
}

TEST (Spelling, ListsWords)
{
    EXPECT_EQ (listedWords (words), "resistor, capacitor, tolerance or vpp");
    EXPECT_EQ (listedWords (std::array<std::string_view, 2> { "A", "B" }, "and"), "A and B");
}

} // namespace stopwright

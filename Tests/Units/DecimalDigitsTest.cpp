// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/DecimalDigits.h"

#include <gtest/gtest.h>

namespace stopwright
{

TEST (DecimalDigits, ShortestHasNoMoreDigitsThanItNeeds)
{
    const auto number = DecimalDigits::shortest (-4.7e-9);
    EXPECT_TRUE (number.negative);
    EXPECT_EQ (number.digits, "47");
    EXPECT_EQ (number.exponent, -9);

    EXPECT_EQ (DecimalDigits::shortest (0.1 + 0.2).digits, "30000000000000004");
    EXPECT_EQ (DecimalDigits::shortest (0.0).digits, "0");
    EXPECT_EQ (DecimalDigits::shortest (1e22).exponent, 22);
}

TEST (DecimalDigits, RoundedCarriesIntoTheNextDecade)
{
    const auto number = DecimalDigits::rounded (999.6, 3);
    EXPECT_EQ (number.digits, "100");
    EXPECT_EQ (number.exponent, 3);
    EXPECT_EQ (DecimalDigits::rounded (999.4, 3).digits, "999");
    EXPECT_EQ (DecimalDigits::rounded (1.0, 0).digits, "1") << "at least one digit";
    EXPECT_EQ (DecimalDigits::rounded (1.0, 99).digits.size(), 17U) << "no more than a double has";
}

TEST (DecimalDigits, PlacesThePointForAnyUnit)
{
    const auto number = DecimalDigits::shortest (4700.0);
    EXPECT_EQ (number.whole (0), "4700");
    EXPECT_EQ (number.fraction (0), "");
    EXPECT_EQ (number.whole (3), "4");
    EXPECT_EQ (number.fraction (3), "7");
    EXPECT_EQ (number.whole (6), "0");
    EXPECT_EQ (number.fraction (6), "0047");
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/ShortNames.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

using Names = std::vector<std::string>;

} // namespace

TEST (ShortNames, LeavesOutTheMiddleOfWhatIsTooLong)
{
    EXPECT_EQ (shortNames ({ "in", "fourteenletter", "behind the treble coil" }),
               (Names { "in", "fourteenletter", "behind \u2026e coil" }));
}

TEST (ShortNames, CountsLettersAndNotBytes)
{
    const std::string fourteen = "\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc";
    EXPECT_EQ (shortNames ({ fourteen }), Names { fourteen });
    EXPECT_EQ (shortNames ({ fourteen + "\u00fc" }).front(),
               fourteen.substr (0, 14) + "\u2026" + fourteen.substr (0, 12));
}

TEST (ShortNames, TellsTwoNamesApartWhereThatCanBe)
{
    const auto shown =
        shortNames ({ "the node before the coil 1 of the stop", "the node before the coil 2 of the stop",
                      "the node before the coil 1 of the shop", "behind the treble coil", "behind the middle coil" });
    EXPECT_NE (shown[0], shown[2]);
    EXPECT_NE (shown[3], shown[4]);
    for (const auto& name : shown)
        EXPECT_LE (name.size(), mostShownLetters + 2) << name; // the ellipsis has three bytes
}

} // namespace stopwright

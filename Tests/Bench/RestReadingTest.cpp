// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/RestReading.h"

#include "Bench/SmallCard.h"
#include "Units/Engineering.h"

#include <gtest/gtest.h>

#include <string>

namespace stopwright::test
{

namespace
{

/// 12 V over two equal resistors, and a diode that blocks from the middle up to the supply.
Card dividerCard()
{
    Card card = smallCard();
    card.parts = { { "V1", { "+", "0" }, Supply { 12.0, 0.0 } },
                   { "R1", { "+", "mid" }, Resistor { 10e3 } },
                   { "R2", { "mid", "0" }, Resistor { 10e3 } },
                   { "D1", { "mid", "+" }, Diode { 2.52e-9, 1.752, 0.0 } },
                   { "R3", { card.taps.front().node, "0" }, Resistor { 1e3 } } };
    card.output = "mid";
    return card;
}

RestReading readingOf (const std::string& name)
{
    for (const auto& reading : restReadingsOf (dividerCard()))
        if (reading.name == name)
            return reading;
    return {};
}

} // namespace

TEST (RestReading, ACardWithoutDevicesHasNone)
{
    EXPECT_TRUE (restReadingsOf (smallCard()).empty());
}

// Ohm's law: 6 V in the middle, 0.6 mA out of the supply; the blocking diode adds nothing that three digits show.
TEST (RestReading, ReadsADividerAsOhmsLawHasIt)
{
    EXPECT_EQ (readingOf ("node mid"), (RestReading { "node mid", formatForReading (6.0, Quantity::voltage), "" }));
    EXPECT_EQ (readingOf ("node +"), (RestReading { "node +", formatForReading (12.0, Quantity::voltage), "" }));
    EXPECT_EQ (readingOf ("V1").number, formatForReading (0.6e-3, Quantity::current));
    EXPECT_EQ (readingOf ("D1").words, "blocking");
}

} // namespace stopwright::test

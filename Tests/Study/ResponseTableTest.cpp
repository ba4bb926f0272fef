// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ResponseTable.h"

#include "Study/SampleCards.h"
#include "Support/Tolerances.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>

namespace stopwright
{

TEST (ResponseTable, IsTheShuntTank)
{
    const ResponseRequest request { .fromHz = 50.0, .toHz = 15000.0, .points = 300 };
    for (const auto& row : responseTable (shuntTankCard (WaveKind::square), request))
    {
        // Voltage divider: feed against load, capacitor and coil with its winding, any textbook.
        const std::complex<double> jw (0.0, 2.0 * std::numbers::pi * row.frequencyHz);
        const auto ratio = (1.0 / 47e3) / (1.0 / 47e3 + 1.0 / 100e3 + jw * 22e-9 + 1.0 / (150.0 + jw));
        EXPECT_NEAR (row.magnitudeDb, 20.0 * std::log10 (std::abs (ratio)), 1e-8);
        EXPECT_NEAR (row.phaseDegrees, std::arg (ratio) * 180.0 / std::numbers::pi, 1e-7);
    }
}

TEST (ResponseTable, IsLogSpacedWithBothEnds)
{
    const ResponseRequest request { .fromHz = 10.0, .toHz = 10000.0, .points = 4 };
    const auto rows = responseTable (shuntTankCard (WaveKind::square), request);
    ASSERT_EQ (rows.size(), 4U);
    EXPECT_EQ (rows[0].frequencyHz, 10.0);
    EXPECT_NEAR (rows[1].frequencyHz, 100.0, 1e-10);
    EXPECT_NEAR (rows[2].frequencyHz, 1000.0, 1e-9);
    EXPECT_EQ (rows[3].frequencyHz, 10000.0);
    EXPECT_EQ (responseTable (shuntTankCard (WaveKind::square), { .fromHz = 440.0, .toHz = 440.0, .points = 1 })[0]
                   .frequencyHz,
               440.0);
}

TEST (ResponseTable, LooksFromAnyTapAtAnyNode)
{
    auto taps = std::vector { sampleTap ("A", WaveKind::square), sampleTap ("B", WaveKind::square) };
    const auto card = straightCard (taps);
    const auto level = [&card] (const std::string& tap, const std::string& node)
    { return responseTable (card, { .tap = tap, .node = node, .points = 1 })[0].magnitudeDb; };
    EXPECT_NEAR (level ("", ""), 20.0 * std::log10 (0.5), 1e-9);
    EXPECT_NEAR (level ("B", "in1"), 0.0, 1e-9);
    EXPECT_LT (level ("A", "in1"), -200.0); // an ideal source holds its node
}

TEST (ResponseTable, RefusesInWords)
{
    const auto card = shuntTankCard (WaveKind::square);
    try
    {
        responseTable (card, { .tap = "W2" });
        FAIL();
    }
    catch (const Error& error)
    {
        EXPECT_STREQ (error.what(), "The card has no tap \"W2\"; it has \"W1\".");
    }
    EXPECT_THROW (responseTable (card, { .node = "nowhere" }), Error);
    EXPECT_THROW (responseTable (card, { .fromHz = 0.0 }), Error);
    EXPECT_THROW (responseTable (card, { .fromHz = 200.0, .toHz = 100.0 }), Error);
    EXPECT_THROW (responseTable (card, { .toHz = std::nan ("") }), Error);
    EXPECT_THROW (responseTable (card, { .points = 0 }), Error);
    EXPECT_THROW (responseTable (card, { .points = 100001 }), Error);
    EXPECT_THROW (responseTable (Card(), {}), Error);
}

} // namespace stopwright

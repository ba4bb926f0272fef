// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ResponseReading.h"

#include "Study/SampleCards.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

/// 10 k and 10 nF: a low-pass whose corner is 1 / (2 pi R C) = 1591.5 Hz.
Card lowPass()
{
    Card card;
    card.taps.push_back (sampleTap ("W1", WaveKind::square));
    card.parts.push_back ({ "R1", { "in", "out" }, Resistor { 10e3 }, 0.0 });
    card.parts.push_back ({ "C1", { "out", "0" }, Capacitor { 10e-9 }, 0.0 });
    card.output = std::string ("out");
    return card;
}

// Closed form of a one-pole low-pass: 1 / (1 + j f / fc).
TEST (ResponseReading, IsTheClosedFormOfALowPass)
{
    const auto reading = responseReading (BenchPoint::ofCard (lowPass(), keySourceForCardAlone (lowPass()), {}), 60);
    ASSERT_EQ (reading.curves.size(), 1u);
    const auto& curve = reading.curves.front();
    EXPECT_NEAR (curve.rows.front().frequencyHz, 20.0, 1e-9);
    EXPECT_NEAR (curve.rows.back().frequencyHz, 20000.0, 1e-6);
    const double cornerHz = 1.0 / (2.0 * M_PI * 10e3 * 10e-9);
    const auto check = [&] (const ResponseRow& row)
    {
        const double ratio = row.frequencyHz / cornerHz;
        EXPECT_NEAR (row.magnitudeDb, -10.0 * std::log10 (1.0 + ratio * ratio), 1e-6);
        EXPECT_NEAR (row.phaseDegrees, -std::atan (ratio) * 180.0 / M_PI, 1e-6);
    };
    for (const auto& row : curve.rows)
        check (row);

    // A square has the odd partials of C4 up to 20 kHz, and lacks the even ones.
    ASSERT_EQ (curve.partials.size(), 76u);
    for (const auto& partial : curve.partials)
    {
        check (partial.row);
        EXPECT_EQ (partial.isInWave, std::lround (partial.harmonic) % 2 == 1) << partial.harmonic;
    }
}

TEST (ResponseReading, HasACurveForEachTap)
{
    auto card = straightCard ({ sampleTap ("A", WaveKind::square), sampleTap ("B", WaveKind::square, "4") });
    const auto reading = responseReading (BenchPoint::ofCard (card, keySourceForCardAlone (card), {}), 60);
    ASSERT_EQ (reading.curves.size(), 2u);
    EXPECT_EQ (reading.curves[1].tap, "B");
    EXPECT_NEAR (reading.curves[0].rows[100].magnitudeDb, -6.0206, 1e-3);
    EXPECT_NEAR (reading.curves[1].partials.front().harmonic, 2.0, 1e-9);
}

} // namespace
} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BleedStudy.h"

#include "Organ/TestOrgan.h"
#include "Tone/FourierSeries.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <limits>
#include <map>
#include <numbers>

namespace stopwright::test
{

// w R C of 2 pF into 47 k, closed form; 61 keys C2 to C7 as powers.
TEST (BleedStudy, TwoPicofaradsInto47k)
{
    struct Value
    {
        int key;
        double db;
    };

    auto card = bareCard();
    card.taps.front().sourceOhms = 47e3;
    auto source = keySourceForCardAlone (card);
    // One key alone: the compass holds it and the played one.
    for (const Value& value :
         { Value { 36, -88.26 }, Value { 60, -76.22 }, Value { 84, -64.18 }, Value { 108, -52.14 } })
    {
        source.lowestKey = value.key;
        source.highestKey = value.key + 1;
        EXPECT_NEAR (bleedLevels (BenchPoint::ofCard (card, source, ""), value.key + 1).fundamentalsDb, value.db, 0.01);
    }
    source.lowestKey = 36;
    source.highestKey = 96;
    // The key played is outside of the compass, so that all 61 are idle.
    EXPECT_NEAR (bleedLevels (BenchPoint::ofCard (card, source, ""), 35).fundamentalsDb, -48.54, 0.01);
}

// Staircases of two ranks: A3's generator is the second rank of A2 and the first of A3. Partials of the same frequency are
// added by hand as complex amplitudes before they are squared.
TEST (BleedStudy, OctavesAddAsAmplitudes)
{
    auto card = bareCard();
    card.taps.front().sourceOhms = 47e3;
    card.taps.front().wave.kind = WaveKind::staircase;
    card.taps.front().wave.ranks = 2;
    auto source = keySourceForCardAlone (card);
    source.lowestKey = 45;
    source.highestKey = 70; // A2 .. A#4, of which the last is played
    std::map<long long, std::complex<double>> idle;
    double played = 0.0;
    for (int key = source.lowestKey; key <= source.highestKey; ++key)
    {
        const double keyHz = source.tuning.keyHz (key);
        for (int n = 1; n * keyHz <= 20000.0 * (1.0 + 1e-9); ++n)
        {
            const std::complex<double> stray (0.0, 2.0 * std::numbers::pi * n * keyHz * 2e-12 * 47e3);
            const auto partial = fourierCoefficient (card.taps.front().wave, n, keyHz);
            if (key == source.highestKey)
                played += std::norm (partial);
            else
                idle[std::llround (n * keyHz * 1e6)] += partial * stray / (1.0 + stray);
        }
    }
    double power = 0.0;
    for (const auto& [hz, volts] : idle)
        power += std::norm (volts);
    const auto found = bleedLevels (BenchPoint::ofCard (card, source, ""), source.highestKey);
    EXPECT_NEAR (found.levelDb, 10.0 * std::log10 (power / played), 1e-6);
    EXPECT_NEAR (bleedLevels (BenchPoint::ofCard (card, source, ""), 70, 4e-12).levelDb, found.levelDb + 6.02, 0.05);
}

TEST (BleedStudy, NothingGetsIntoAnIdealSource)
{
    const auto card = bareCard();
    const auto found = bleedLevels (BenchPoint::ofCard (card, keySourceForCardAlone (card), ""), 60);
    EXPECT_EQ (found.levelDb, -std::numeric_limits<double>::infinity());
    EXPECT_EQ (found.fundamentalsDb, -std::numeric_limits<double>::infinity());
}

} // namespace stopwright::test

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/SourceStudy.h"

#include "Study/HarmonicTable.h"
#include "Study/SampleCards.h"
#include "Study/SourceSpectrum.h"
#include "Support/Random.h"
#include "Tone/FourierSeries.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr double roundingDb = 1e-9;

KeyedBus busOf (const std::string& name, WaveKind kind, const std::string& footage)
{
    KeyedBus bus;
    bus.name = name;
    bus.wave.kind = kind;
    bus.footage = Footage::parse (footage);
    bus.voltsPeakToPeak = 2.0; // as sampleTap
    return bus;
}

/// Equal temperament, generators up to C9; squares at 8, 4, 2 2/3 and 2 ft, and a staircase.
Instrument organ()
{
    Instrument instrument;
    instrument.divisions = { { "Manual", 36, 96, {} } };
    for (const std::string footage : { "8", "4", "2 2/3", "2" })
        instrument.keyedBuses.push_back (busOf ("Square " + footage, WaveKind::square, footage));
    instrument.keyedBuses.push_back (busOf ("Staircase 8", WaveKind::staircase, "8"));
    return instrument;
}

TargetMask maskOf (const std::vector<std::pair<int, double>>& levels)
{
    TargetMask mask;
    for (const auto& [harmonic, db] : levels)
        mask.harmonics.push_back ({ harmonic, false, { db, 6.0 } });
    return mask;
}

WantedPartial wishOf (const Card& card, const TargetMask& mask, int key, std::size_t entry)
{
    const auto wishes = SourceStudy (organ(), "Manual", card).wishes (mask, key);
    return *std::ranges::find (wishes, entry, &WantedPartial::entry);
}

const PartialSupply* supplyOf (const WantedPartial& wanted, std::size_t bus)
{
    const auto found = std::ranges::find (wanted.supplies, bus, &PartialSupply::bus);
    return found == wanted.supplies.end() ? nullptr : &*found;
}

constexpr std::size_t square4 = 1;
constexpr std::size_t square223 = 2;
constexpr std::size_t square2 = 3;
constexpr std::size_t staircase8 = 4;

Card squareCard()
{
    return straightCard ({ sampleTap ("W", WaveKind::square) });
}

} // namespace

TEST (SourceStudy, AnOctaveComesFromTheFourFootSquare)
{
    const auto wanted = wishOf (squareCard(), maskOf ({ { 1, 0.0 }, { 2, -30.0 } }), 60, 1);
    EXPECT_EQ (wanted.state, WishState::absent);
    ASSERT_EQ (wanted.reasons.size(), 1U);
    EXPECT_EQ (wanted.reasons[0].cause, LackCause::halfWave);
    const auto* const supply = supplyOf (wanted, square4);
    ASSERT_NE (supply, nullptr);
    EXPECT_EQ (supply->partial, 1);
    // Its fundamental is as strong as the square's own: -30 dB is the ratio, 31.6 times the resistor. Closed form.
    ASSERT_TRUE (supply->ratio);
    EXPECT_NEAR (toDecibels (*supply->ratio), -30.0, roundingDb);
    EXPECT_EQ (supplyOf (wanted, 0), nullptr) << "another square has none either";
    EXPECT_EQ (supplyOf (wanted, square2), nullptr) << "h4 is the first of a 2 ft one";
    EXPECT_NE (supplyOf (wanted, staircase8), nullptr);
}

TEST (SourceStudy, LandsOnTheRightHarmonic)
{
    const auto mask = maskOf ({ { 1, 0.0 }, { 4, -20.0 }, { 6, -22.0 } });
    // h6 is the third of the 4 ft square, 1/3 as strong as its first; the 2 ft square has h4 but no h6.
    const auto sixth = wishOf (squareCard(), mask, 60, 2);
    const auto* const supply = supplyOf (sixth, square4);
    ASSERT_NE (supply, nullptr);
    EXPECT_EQ (supply->partial, 3);
    ASSERT_TRUE (supply->ratio);
    EXPECT_NEAR (*supply->ratio, 3.0 * fromDecibels (-22.0), 1e-9);
    EXPECT_EQ (supplyOf (sixth, square2), nullptr);
    const auto fourth = wishOf (squareCard(), mask, 60, 1);
    EXPECT_EQ (supplyOf (fourth, square4), nullptr) << "it would be its second, an even one";
    ASSERT_NE (supplyOf (fourth, square2), nullptr);
    EXPECT_EQ (supplyOf (fourth, square2)->partial, 1);
}

TEST (SourceStudy, ABorrowedTwelfthIsNoThird)
{
    auto card = straightCard ({ sampleTap ("W", WaveKind::square, "4") });
    const auto mask = maskOf ({ { 2, 0.0 }, { 3, -10.0 } });
    const auto wanted = wishOf (card, mask, 60, 1);
    EXPECT_EQ (wanted.state, WishState::absent);
    EXPECT_EQ (wanted.reasons.at (0).cause, LackCause::noMultiple);
    EXPECT_EQ (supplyOf (wanted, square223), nullptr);

    auto exact = organ();
    exact.tuning.mutations = MutationSource::exact;
    const auto wishes = SourceStudy (exact, "Manual", card).wishes (mask, 60);
    ASSERT_NE (supplyOf (wishes[1], square223), nullptr);
    EXPECT_EQ (supplyOf (wishes[1], square223)->partial, 1);
    EXPECT_NEAR (toDecibels (*supplyOf (wishes[1], square223)->ratio), -10.0, roundingDb);
}

TEST (SourceStudy, TooWeakIsMoreThanTheLimit)
{
    const SourceStudy study (organ(), "Manual", straightCard ({ sampleTap ("W", WaveKind::sawtooth) }));
    const auto mask = maskOf ({ { 1, 0.0 }, { 10, 0.0 }, { 11, 0.0 } });
    const auto wishes = study.wishes (mask, 60); // 1/n: -20 dB exactly, and -20.83
    EXPECT_EQ (wishes[1].state, WishState::present);
    EXPECT_EQ (wishes[2].state, WishState::tooWeak);
    EXPECT_EQ (wishes[2].reasons.at (0).cause, LackCause::fallsOff);
    EXPECT_EQ (study.wishes (mask, 60, 21.0)[2].state, WishState::present);
    EXPECT_EQ (study.wishes (mask, 60, 19.0)[1].state, WishState::tooWeak);
}

TEST (SourceStudy, WishesCountFromTheStrongestOfTheMask)
{
    auto mask = maskOf ({ { 1, 0.0 }, { 2, 4.0 } });
    mask.reference = MaskReference::first;
    EXPECT_EQ (wishOf (squareCard(), mask, 60, 0).wantedDb, -4.0);
    EXPECT_EQ (wishOf (squareCard(), mask, 60, 1).wantedDb, 0.0);
}

TEST (SourceStudy, TheFormantOfC2FallsIntoTheHoleOfTheStaircase)
{
    // Four ranks through a tank at 1075 Hz: of C2 the sixteenth, 1046.5 Hz, should be the strongest. It is missing, and
    // the seventeenth is (Fourier series x nodal analysis: 1111.9 Hz).
    const auto card = shuntTankCard (WaveKind::staircase);
    TargetMask mask;
    mask.bands = { { "main", 1075.0, 200.0, { 0.0, 3.0 } } };
    const auto wanted = wishOf (card, mask, 36, 0);
    EXPECT_EQ (wanted.harmonic, 16.0);
    EXPECT_EQ (wanted.state, WishState::absent);
    EXPECT_EQ (wanted.reasons.at (0), (LackReason { 0, LackCause::missingRank, 16.0 }));
    const auto rows = harmonicTable (card, keysUpToC9(), 36);
    const auto strongest = std::ranges::max (rows, {}, &HarmonicRow::outputPeakVolts);
    EXPECT_EQ (strongest.harmonic, 17.0);
    EXPECT_NEAR (strongest.frequencyHz, 1111.9, 0.05);
}

TEST (SourceStudy, TheHighestKeysLackARank)
{
    const auto card = shuntTankCard (WaveKind::staircase);
    const auto mask = maskOf ({ { 1, 0.0 }, { 8, -20.0 }, { 10, -20.0 } });
    const auto eighth = wishOf (card, mask, 96, 1);
    EXPECT_EQ (eighth.state, WishState::absent);
    EXPECT_EQ (eighth.reasons.at (0).cause, LackCause::rankWithoutGenerator);
    EXPECT_TRUE (eighth.supplies.empty()) << "nothing runs that high";
    const auto tenth = wishOf (card, mask, 96, 2); // 20.9 kHz
    EXPECT_EQ (tenth.state, WishState::aboveHearing);
    EXPECT_EQ (tenth.reasons.at (0).cause, LackCause::aboveHearing);
    EXPECT_TRUE (tenth.supplies.empty());
}

TEST (SourceStudy, SaysWhenTapsCancel)
{
    auto taps = std::vector { sampleTap ("A", WaveKind::sawtooth), sampleTap ("B", WaveKind::square) };
    taps[1].polarity = -1;
    taps[1].voltsPeakToPeak = 1.0; // 2/(pi n) less 2/(pi n) for odd n: only even ones are left
    const auto wanted = wishOf (straightCard (taps), maskOf ({ { 2, 0.0 }, { 3, -10.0 } }), 60, 1);
    EXPECT_EQ (wanted.state, WishState::absent);
    ASSERT_EQ (wanted.reasons.size(), 2U);
    EXPECT_EQ (wanted.reasons[0].cause, LackCause::cancelled);
    EXPECT_EQ (wanted.reasons[1].cause, LackCause::cancelled);
}

TEST (SourceStudy, LeavesBoundsAndOtherKeysAlone)
{
    TargetMask mask;
    mask.harmonics = { { 2, true, { -45.0, 6.0 } }, { 4, false, { 0.0, 6.0, {}, 59 } } };
    mask.bands = { { "between", 400.0, 100.0, { 0.0, 3.0 } } }; // of C4: 261.6, 523.3
    EXPECT_TRUE (SourceStudy (organ(), "Manual", squareCard()).wishes (mask, 60).empty());
}

TEST (SourceStudy, AWishThatNoMixtureReaches)
{
    // A staircase's octave is at -6.02 dB re its own first, so a square plus any of it stays below -6 dB.
    const auto reachable = wishOf (squareCard(), maskOf ({ { 1, 0.0 }, { 2, -6.1 } }), 60, 1);
    EXPECT_TRUE (supplyOf (reachable, staircase8)->ratio);
    const auto beyond = wishOf (squareCard(), maskOf ({ { 1, 0.0 }, { 2, -6.0 } }), 60, 1);
    EXPECT_FALSE (supplyOf (beyond, staircase8)->ratio);
    EXPECT_TRUE (supplyOf (beyond, square4)->ratio);
}

/// The ratio put back into the Fourier series by hand, partial by partial.
TEST (MixingRatio, BringsThePartialToItsLevel)
{
    Random random (20240706);
    int found = 0;
    for (int round = 0; round < 60; ++round)
    {
        auto first = sampleTap ("A", random.chance (0.5) ? WaveKind::square : WaveKind::outphased);
        first.wave.outphaseWeight = random.uniform (0.4, 0.6);
        auto second = sampleTap ("B", WaveKind::pulse, random.chance (0.5) ? "8" : "4");
        second.wave.duty = random.uniform (0.05, 0.45);
        const int step = second.footage.harmonicOfEightFoot() > 1.5 ? 2 : 1;
        const int wanted = 2 * random.integer (1, 4);
        const double wantedDb = random.uniform (-30.0, -3.0);
        const auto keys = keysUpToC9();
        const auto ratio =
            mixingRatio (SourceSpectrum ({ first }, keys, 60), SourceSpectrum ({ second }, keys, 60), wanted, wantedDb);
        const auto levelAt = [&] (double x)
        {
            double strongest = 0.0;
            double there = 0.0;
            for (int n = 1; n * 261.63 < 20000.0; ++n)
            {
                auto sum = fourierCoefficient (first.wave, n, 261.63);
                if (n % step == 0)
                    sum += x * fourierCoefficient (second.wave, n / step, 261.63 * step);
                strongest = std::max (strongest, std::abs (sum));
                there = n == wanted ? std::abs (sum) : there;
            }
            return toDecibels (there / strongest);
        };
        if (levelAt (0.0) > wantedDb)
            continue;
        found += ratio ? 1 : 0;
        if (ratio)
        {
            EXPECT_NEAR (levelAt (*ratio), wantedDb, 1e-6) << round;
        }
        // No smaller one does, on a grid far finer than its own.
        for (double x = 1e-3; x < ratio.value_or (100.0) * 0.999; x *= 1.01)
            ASSERT_LT (levelAt (x), wantedDb + 1e-9) << round << " at " << x;
    }
    EXPECT_GT (found, 20);
}

} // namespace stopwright

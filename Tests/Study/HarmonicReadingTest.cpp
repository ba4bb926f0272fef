// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/HarmonicReading.h"

#include "Study/HarmonicTable.h"
#include "Study/SampleCards.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{
namespace
{

Card squareIntoDivider()
{
    Card card;
    card.taps.push_back ({ "W1", Wave {}, Footage {}, 2.0, 0.0, "in", 1, {} });
    card.parts.push_back ({ "R1", { "in", "out" }, Resistor { 10e3 }, 0.0 });
    card.parts.push_back ({ "R2", { "out", "0" }, Resistor { 10e3 }, 0.0 });
    card.output = std::string ("out");
    return card;
}

HarmonicReading readingOf (const Card& card, int key, const TargetMask* mask = nullptr, const std::string& node = {})
{
    return harmonicReading (BenchPoint::ofCard (card, keySourceForCardAlone (card), node), key, mask);
}

TEST (HarmonicReading, ASquareLacksItsEvenPartials)
{
    const auto reading = readingOf (squareIntoDivider(), 60);
    ASSERT_GE (reading.bars.size(), 9u);
    EXPECT_EQ (reading.strongest, 0);
    EXPECT_NEAR (reading.lossDb, -6.0206, 1e-3);
    for (const auto& bar : reading.bars)
    {
        const bool isEven = std::lround (bar.harmonic) % 2 == 0;
        EXPECT_EQ (bar.isAbsent, isEven) << bar.harmonic;
        if (isEven)
            continue;
        // A square's partials fall as 1/n (Fourier), and a divider of resistors keeps them.
        EXPECT_NEAR (bar.sourceDb, -20.0 * std::log10 (bar.harmonic), 1e-6);
        EXPECT_NEAR (bar.resultDb, bar.sourceDb, 1e-6);
    }
}

TEST (HarmonicReading, IsTheHarmonicTableAtTheOutput)
{
    const auto card = shuntTankCard (WaveKind::staircase);
    const auto table = harmonicTable (card, keySourceForCardAlone (card), 48);
    const auto reading = readingOf (card, 48);
    ASSERT_EQ (reading.bars.size(), table.size());
    for (std::size_t row = 0; row < table.size(); ++row)
    {
        EXPECT_NEAR (reading.bars[row].sourcePeakVolts, table[row].sourcePeakVolts, 1e-12);
        EXPECT_NEAR (reading.bars[row].resultPeakVolts, table[row].outputPeakVolts, 1e-10);
    }
}

TEST (HarmonicReading, LooksAtAnyNode)
{
    // At the tap's own node the result is the source.
    for (const auto& bar : readingOf (squareIntoDivider(), 60, nullptr, "in").bars)
        EXPECT_NEAR (bar.resultPeakVolts, bar.sourcePeakVolts, 1e-9);
}

TEST (HarmonicReading, AKeyWithoutGeneratorsHasNoBars)
{
    const auto card = squareIntoDivider();
    const auto reading =
        harmonicReading (BenchPoint::ofCard (card, keySourceForCardAlone (card, 500.0), {}), 84, nullptr);
    EXPECT_TRUE (reading.bars.empty());
    EXPECT_EQ (reading.strongest, -1);
}

TEST (MaskReading, WindowsStandWhereTheBestGainPutsThem)
{
    TargetMask mask;
    mask.name = "Square";
    mask.reference = MaskReference::first;
    mask.harmonics.push_back ({ 1, false, { 0.0, 2.0 } });
    mask.harmonics.push_back ({ 3, false, { toDecibels (1.0 / 3.0) - 6.0, 2.0 } }); // 6 dB less than a square has
    mask.harmonics.push_back ({ 5, true, { 0.0, 1.0 } });
    mask.harmonics.push_back ({ 2, false, { -10.0, 2.0 } });
    const auto reading = readingOf (squareIntoDivider(), 60, &mask);
    ASSERT_TRUE (reading.mask.has_value());
    const auto& windows = reading.mask->windows;
    ASSERT_EQ (windows.size(), 4u);

    // The mean of 0 and 6 is taken out: 3 dB too much wished of the first, 3 dB too little of the third.
    EXPECT_NEAR (windows[0].lowestDb, 3.0 - 2.0, 1e-6);
    EXPECT_NEAR (windows[0].highestDb, 3.0 + 2.0, 1e-6);
    EXPECT_EQ (windows[0].fit.verdict, MaskVerdict::tooWeak);
    EXPECT_NEAR (windows[1].highestDb, toDecibels (1.0 / 3.0) - 3.0 + 2.0, 1e-6);
    EXPECT_EQ (windows[1].fit.verdict, MaskVerdict::tooStrong);
    EXPECT_TRUE (windows[2].isBound);
    EXPECT_EQ (windows[2].lowestDb, -HUGE_VAL);
    EXPECT_EQ (windows[3].fit.verdict, MaskVerdict::absent);
    EXPECT_EQ (windows[1].name, "harmonic 3");
    EXPECT_NEAR (windows[1].lowestHz, 3.0 * 261.626, 0.01);
}

TEST (MaskReading, BandsStandReTheStrongestPartial)
{
    TargetMask mask;
    mask.bands.push_back ({ "main", 800.0, 300.0, { -3.0, 2.0 } });
    mask.bands.push_back ({ "other keys", 800.0, 300.0, { -3.0, 2.0, 72, 96 } });
    const auto reading = readingOf (squareIntoDivider(), 60, &mask);
    ASSERT_TRUE (reading.mask.has_value());
    ASSERT_EQ (reading.mask->windows.size(), 1u) << "what says nothing about the key is left out";
    const auto& band = reading.mask->windows.front();
    EXPECT_TRUE (band.isBand);
    EXPECT_DOUBLE_EQ (band.lowestHz, 650.0);
    EXPECT_DOUBLE_EQ (band.highestHz, 950.0);
    EXPECT_DOUBLE_EQ (band.lowestDb, -5.0);
    EXPECT_EQ (band.fit.verdict, MaskVerdict::tooWeak); // the third partial, 785 Hz, is at -9.5 dB
}

} // namespace
} // namespace stopwright

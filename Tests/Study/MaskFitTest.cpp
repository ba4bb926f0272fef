// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/MaskFit.h"

#include "Organ/TestOrgan.h"
#include "Study/SampleCards.h"
#include "Support/Random.h"
#include "Units/Decibels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

constexpr double roundingDb = 1e-9;

MaskedTone randomTone (Random& random)
{
    MaskedTone tone;
    tone.keyHz = random.uniform (60.0, 2000.0);
    for (int n = 1; n * tone.keyHz <= 20000.0 && n <= 40; ++n)
        tone.partials.push_back (
            { static_cast<double> (n), n * tone.keyHz, random.chance (0.2) ? 0.0 : random.logUniform (1e-5, 1.0) });
    tone.partials.front().peakVolts = 0.5;
    return tone;
}

double strongestOf (const MaskedTone& tone)
{
    return std::ranges::max (tone.partials, {}, &MaskedPartial::peakVolts).peakVolts;
}

/// The mask that the tone's own levels make: what is absent has an upper bound, what is there a level and a band.
TargetMask maskOf (const MaskedTone& tone, MaskReference reference)
{
    TargetMask mask;
    mask.reference = reference;
    const double whole = reference == MaskReference::first ? tone.partials.front().peakVolts : strongestOf (tone);
    for (const auto& partial : tone.partials)
    {
        const auto n = static_cast<int> (std::lround (partial.harmonic));
        if (partial.peakVolts == 0.0)
        {
            mask.harmonics.push_back ({ n, true, { -100.0, 0.0 } });
            continue;
        }
        mask.harmonics.push_back ({ n, false, { toDecibels (partial.peakVolts / whole), 0.0 } });
        mask.bands.push_back ({ "b",
                                partial.frequencyHz,
                                0.5 * tone.keyHz,
                                { toDecibels (partial.peakVolts / strongestOf (tone)), 0.0 } });
    }
    return mask;
}

const MaskEntryFit& entryOf (const MaskFit& fit, std::size_t entry)
{
    return *std::ranges::find (fit.entries, entry, &MaskEntryFit::entry);
}

} // namespace

TEST (MaskFit, OfAMaskMadeFromTheToneIsZero)
{
    Random random (20240702);
    for (int round = 0; round < 200; ++round)
    {
        const auto tone = randomTone (random);
        for (const auto reference : { MaskReference::first, MaskReference::strongest })
        {
            const auto fit = fitMask (maskOf (tone, reference), tone);
            EXPECT_NEAR (fit.offsetDb, 0.0, roundingDb);
            EXPECT_NEAR (fit.rmsDb, 0.0, roundingDb);
            EXPECT_EQ (fit.outside, 0);
            EXPECT_EQ (fit.largestOutsideDb, 0.0);
        }
    }
}

TEST (MaskFit, AnOffsetOfTheWholeStopChangesNothing)
{
    Random random (20240703);
    for (int round = 0; round < 100; ++round)
    {
        const auto mask = maskOf (randomTone (random), MaskReference::strongest);
        const auto tone = randomTone (random);
        auto louder = tone;
        const double gain = random.logUniform (1e-3, 1e3);
        for (auto& partial : louder.partials)
            partial.peakVolts *= gain;
        const auto one = fitMask (mask, tone);
        const auto other = fitMask (mask, louder);
        EXPECT_NEAR (one.rmsDb, other.rmsDb, roundingDb);
        EXPECT_NEAR (one.largestOutsideDb, other.largestOutsideDb, roundingDb);
        EXPECT_EQ (one.absent, other.absent);
        EXPECT_EQ (one.outside, other.outside);
    }
}

TEST (MaskFit, AnOffsetOfTheMasksHarmonicsIsTakenOut)
{
    Random random (20240704);
    const auto tone = randomTone (random);
    auto mask = maskOf (tone, MaskReference::strongest);
    std::erase_if (mask.harmonics, &MaskHarmonic::atMost);
    for (auto& harmonic : mask.harmonics)
        harmonic.wish.levelDb += 7.0;
    const auto fit = fitMask (mask, tone);
    EXPECT_NEAR (fit.offsetDb, -7.0, roundingDb);
    EXPECT_NEAR (fit.rmsDb, 0.0, roundingDb);
}

TEST (MaskFit, TheOrderOfItsEntriesDoesNotMatter)
{
    Random random (20240705);
    for (int round = 0; round < 100; ++round)
    {
        auto mask = maskOf (randomTone (random), MaskReference::first);
        const auto tone = randomTone (random);
        const auto one = fitMask (mask, tone);
        for (std::size_t i = mask.harmonics.size() - 1; i > 0; --i)
            std::swap (mask.harmonics[i],
                       mask.harmonics[static_cast<std::size_t> (random.integer (0, static_cast<int> (i)))]);
        std::ranges::reverse (mask.bands);
        const auto other = fitMask (mask, tone);
        EXPECT_NEAR (one.offsetDb, other.offsetDb, roundingDb);
        EXPECT_NEAR (one.rmsDb, other.rmsDb, roundingDb);
        EXPECT_EQ (one.outside, other.outside);
        EXPECT_NEAR (one.largestDb, other.largestDb, roundingDb);
    }
}

TEST (MaskFit, ComparesWorkedLevels)
{
    // Differences -21, -20.5, -22, -20, -23: mean -21.3, rms 1.077, largest 1.7, by hand.
    MaskedTone tone;
    TargetMask mask;
    const std::vector<std::pair<double, double>> levels {
        { 0.0, -21.0 }, { -3.0, -23.5 }, { -6.0, -28.0 }, { -12.0, -32.0 }, { -20.0, -43.0 }
    };
    int n = 1;
    for (const auto& [wanted, found] : levels)
    {
        tone.partials.push_back ({ static_cast<double> (n), n * tone.keyHz, fromDecibels (found) });
        mask.harmonics.push_back ({ n++, false, { wanted, 1.0 } });
    }
    const auto fit = fitMask (mask, tone);
    EXPECT_NEAR (fit.offsetDb, -0.3, roundingDb) << "re the strongest, which is -21 dB";
    EXPECT_NEAR (fit.rmsDb, std::sqrt (1.16), roundingDb);
    EXPECT_NEAR (fit.largestDb, 1.7, roundingDb);
    EXPECT_EQ (fit.outside, 2);
    EXPECT_NEAR (entryOf (fit, 3).outsideDb, 0.3, roundingDb);
    EXPECT_EQ (entryOf (fit, 3).verdict, MaskVerdict::tooStrong);
    EXPECT_NEAR (entryOf (fit, 4).outsideDb, 0.7, roundingDb);
    EXPECT_EQ (entryOf (fit, 4).verdict, MaskVerdict::tooWeak);
    EXPECT_NEAR (fit.largestOutsideDb, 0.7, roundingDb);
    EXPECT_NEAR (fit.rmsOutsideDb, std::sqrt ((0.09 + 0.49) / 5.0), roundingDb);
}

TEST (MaskFit, CountsWhatIsAbsentInsteadOfMeasuringIt)
{
    const auto card = straightCard ({ sampleTap ("W", WaveKind::square) });
    TargetMask mask;
    mask.harmonics = { { 1, false, { 0.0, 6.0 } },
                       { 2, false, { -30.0, 6.0 } },
                       { 3, false, { toDecibels (1.0 / 3.0), 6.0 } },
                       { 4, true, { -45.0, 0.0 } } };
    const auto fit = fitMask (mask, toneOfCard (card, keySourceForCardAlone (card), 60, mask.unison));
    EXPECT_EQ (fit.absent, 1);
    EXPECT_EQ (fit.outside, 1);
    EXPECT_EQ (fit.compared, 4);
    EXPECT_EQ (entryOf (fit, 1).verdict, MaskVerdict::absent);
    EXPECT_TRUE (std::isinf (entryOf (fit, 1).outsideDb));
    EXPECT_EQ (entryOf (fit, 3).verdict, MaskVerdict::inside) << "silence is below any bound";
    EXPECT_NEAR (fit.rmsDb, 0.0, roundingDb) << "the rest fits";
    EXPECT_TRUE (std::isfinite (fit.largestOutsideDb));
}

TEST (MaskFit, AToneOfNothingIsAllAbsent)
{
    TargetMask mask;
    mask.reference = MaskReference::first;
    mask.harmonics = { { 1, false, { 0.0, 6.0 } } };
    mask.bands = { { "b", 1000.0, 500.0, { 0.0, 3.0 } } };
    MaskedTone tone;
    tone.partials = { { 1.0, 261.6, 0.0 }, { 4.0, 1046.4, 0.0 } };
    const auto fit = fitMask (mask, tone);
    EXPECT_EQ (fit.absent, 2);
    EXPECT_EQ (fit.offsetDb, 0.0);
    EXPECT_EQ (fit.rmsDb, 0.0);
}

TEST (MaskFit, LeavesOutWhatCannotBeCompared)
{
    const auto card = straightCard ({ sampleTap ("W", WaveKind::sawtooth) });
    TargetMask mask;
    mask.harmonics = { { 1, false, { 0.0, 6.0 } }, { 10, false, { 0.0, 1.0 } }, { 2, false, { 0.0, 1.0, {}, 95 } } };
    mask.bands = { { "between", 3100.0, 500.0, { 0.0, 3.0 } }, { "at h2", 4186.0, 500.0, { -6.0, 1.0 } } };
    // C7 is 2093 Hz: its tenth partial lies above 20 kHz, and none between the first and the second.
    const auto fit = fitMask (mask, toneOfCard (card, keySourceForCardAlone (card), 96, mask.unison));
    EXPECT_EQ (entryOf (fit, 1).verdict, MaskVerdict::aboveHearing);
    EXPECT_EQ (entryOf (fit, 2).verdict, MaskVerdict::otherKeys);
    EXPECT_EQ (entryOf (fit, 3).verdict, MaskVerdict::noPartial);
    EXPECT_EQ (entryOf (fit, 4).verdict, MaskVerdict::inside);
    EXPECT_NEAR (entryOf (fit, 4).levelDb, toDecibels (0.5), roundingDb);
    EXPECT_EQ (fit.compared, 2);
    EXPECT_EQ (fit.outside, 0);
}

TEST (MaskFit, CountsHarmonicsFromTheMasksUnison)
{
    // Square at 2 2/3 ft, exact: its harmonics 1 and 3 are the key's 3 and 9.
    const auto card = straightCard ({ sampleTap ("W", WaveKind::square, "2 2/3") });
    TargetMask mask;
    mask.unison = Footage::parse ("2 2/3");
    mask.harmonics = { { 1, false, { 0.0, 0.0 } }, { 3, false, { toDecibels (1.0 / 3.0), 0.0 } } };
    EXPECT_EQ (fitMask (mask, toneOfCard (card, keySourceForCardAlone (card), 60, mask.unison)).outside, 0);

    // Borrowed from the scale it is its own unison still, but no third harmonic of an 8 ft pitch.
    const auto keys = keysUpToC9();
    EXPECT_EQ (fitMask (mask, toneOfCard (card, keys, 60, mask.unison)).outside, 0);
    mask.unison = Footage::parse ("8");
    mask.harmonics = { { 3, false, { 0.0, 0.0 } } };
    EXPECT_EQ (fitMask (mask, toneOfCard (card, keys, 60, mask.unison)).absent, 1);
    EXPECT_EQ (fitMask (mask, toneOfCard (card, keySourceForCardAlone (card), 60, mask.unison)).absent, 0);
}

TEST (MaskFit, ABareStopOnItsRailIsItsCard)
{
    auto organ = test::emptyOrgan (test::passiveBus());
    organ.add ("Square", test::bareCard());
    const RailStudy study (organ.instrument, organ.cards);
    TargetMask mask;
    for (int n = 1; n < 10; n += 2)
        mask.harmonics.push_back ({ n, false, { toDecibels (1.0 / n), 0.0 } });
    for (const int key : { 36, 60, 84 })
    {
        const auto fit = fitMask (mask, toneOfStop (study, 0, key, study.withDrawn ({ 0 }), mask.unison));
        EXPECT_NEAR (fit.rmsDb, 0.0, roundingDb) << key;
        EXPECT_EQ (fit.outside, 0) << key;
    }
}

TEST (MaskFit, AddsUpOverTheCompass)
{
    std::vector<MaskFit> fits (3);
    fits[0].key = 48;
    fits[0].compared = 2;
    fits[0].rmsDb = 3.0;
    fits[0].largestOutsideDb = 2.0;
    fits[0].outside = 1;
    fits[1].key = 60;
    fits[1].compared = 2;
    fits[1].rmsDb = 4.0;
    fits[2].key = 72; // nothing to compare
    const auto summary = summaryOf (fits);
    EXPECT_EQ (summary.keys, 2);
    EXPECT_EQ (summary.keysInside, 1);
    EXPECT_NEAR (summary.rmsDb, std::sqrt (12.5), roundingDb);
    EXPECT_EQ (summary.keyOfLargest, 48);
    EXPECT_EQ (summary.largestOutsideDb, 2.0);
    EXPECT_EQ (summaryOf ({}).keyOfLargest, -1);
}

} // namespace stopwright

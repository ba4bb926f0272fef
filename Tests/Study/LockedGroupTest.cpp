// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/LockedGroup.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stopwright::test
{

namespace
{

std::vector<LockedGroup>
    groupsOf (const Tuning& tuning, const ResponseCurve& flat, const std::vector<std::pair<int, std::string>>& sounding)
{
    std::vector<SoundingWave> waves;
    for (const auto& [key, footage] : sounding)
        waves.push_back ({ {}, *tuning.generatorFor (key, Footage::parse (footage)), &tuning, 2.0, &flat });
    return lockedGroups (waves);
}

} // namespace

TEST (LockedGroup, OctavesAreOneAndFifthsAreNot)
{
    const ResponseCurve flat ([] (double) { return 1.0; });
    const auto tuning = Tuning::equalTempered (440.0, 20000.0);
    const auto groups = groupsOf (tuning, flat, { { 57, "8" }, { 69, "8" }, { 57, "16" }, { 64, "8" } });
    ASSERT_EQ (groups.size(), 2U);
    EXPECT_NEAR (groups[0].baseHz, 329.6276, 1e-3); // E
    EXPECT_NEAR (groups[1].baseHz, 110.0, 1e-9);    // A
    EXPECT_NEAR (groups[1].fastestHz, 440.0, 1e-9);
    EXPECT_EQ (groups[1].waves.size(), 3U);
}

TEST (LockedGroup, AnExactMutationBelongsToItsOctavesAndABorrowedOneDoesNot)
{
    const ResponseCurve flat ([] (double) { return 1.0; });
    const auto exact = Tuning::equalTempered (440.0, 20000.0, MutationSource::exact,
                                              { Footage::parse ("2 2/3"), Footage::parse ("5 1/3") });
    const auto together = groupsOf (exact, flat, { { 57, "8" }, { 57, "2 2/3" } });
    ASSERT_EQ (together.size(), 1U);
    EXPECT_NEAR (together[0].baseHz, 220.0, 1e-9);
    // A5's octave and a third of it: 880 and 330 Hz are 8 and 3 times 110 Hz.
    const auto part = groupsOf (exact, flat, { { 81, "8" }, { 57, "5 1/3" } });
    ASSERT_EQ (part.size(), 1U);
    EXPECT_NEAR (part[0].baseHz, 110.0, 1e-9);

    const auto borrowed = Tuning::equalTempered (440.0, 20000.0, MutationSource::borrowed);
    EXPECT_EQ (groupsOf (borrowed, flat, { { 57, "8" }, { 57, "2 2/3" } }).size(), 2U);
}

TEST (LockedGroup, DoubledGeneratorsAddInAmplitude)
{
    const ResponseCurve flat ([] (double) { return 1.0; });
    const auto tuning = Tuning::equalTempered (440.0, 20000.0);
    const auto groups = groupsOf (tuning, flat, { { 69, "8" }, { 57, "4" }, { 57, "8" } });
    ASSERT_EQ (groups.size(), 1U);
    const auto spectrum = groups[0].spectrum();
    constexpr double fundamental = 4.0 / std::numbers::pi; // of a square of +-1 V
    EXPECT_NEAR (std::abs (spectrum[1]), fundamental, 1e-12);
    EXPECT_NEAR (std::abs (spectrum[2]), 2.0 * fundamental, 1e-12);
    EXPECT_NEAR (std::abs (spectrum[3]), fundamental / 3.0, 1e-12);
    EXPECT_NEAR (std::abs (spectrum[6]), 2.0 * fundamental / 3.0, 1e-12);
    EXPECT_NEAR (std::abs (spectrum[4]), 0.0, 1e-12);
    EXPECT_NEAR (rmsOf (spectrum), std::sqrt (5.0), 1e-4);
}

// A pole at 100 kHz, between the frequencies the curve keeps.
TEST (ResponseCurve, IsGoodBetweenItsFrequencies)
{
    const auto pole = [] (double hz) { return 1.0 / std::complex<double> (1.0, hz / 100e3); };
    const ResponseCurve curve (pole);
    std::vector<std::complex<double>> bins (20000);
    curve.fill (777.7, bins);
    EXPECT_EQ (bins[0], std::complex<double> (0.0));
    for (std::size_t bin = 1; bin < bins.size(); ++bin)
    {
        const double hz = static_cast<double> (bin) * 777.7;
        EXPECT_LT (std::abs (bins[bin] - pole (hz)), hz <= 20000.0 ? 1e-15 : 3e-5) << bin;
    }
}

} // namespace stopwright::test

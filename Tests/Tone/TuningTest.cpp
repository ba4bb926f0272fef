// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/Tuning.h"

#include "Support/Tolerances.h"
#include "Units/Error.h"
#include "Units/Pitch.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace stopwright
{

namespace
{

// Divisors of the usual top-octave set. Source: data sheet values as passed on by synthesiser builders.
constexpr std::array<int, 12> divisors { 478, 451, 426, 402, 379, 358, 338, 319, 301, 284, 268, 253 };

Tuning clocked (TopBehaviour top = TopBehaviour::silent)
{
    return Tuning::topOctave (2000240.0, divisors, 8, 120, top);
}

Footage feet (const char* text)
{
    return Footage::parse (text);
}

double soundingHz (const Tuning& tuning, int key, const char* footage)
{
    const auto generator = tuning.generatorFor (key, feet (footage));
    return generator ? tuning.frequencyHz (*generator) : 0.0;
}

} // namespace

// Source: 1200 log2 of clock / divisor over equal temperament at A4 = 440 Hz (ISO 16:1975).
TEST (Tuning, TopOctaveIsOffByItsKnownCents)
{
    const std::array<double, 13> cents { -0.582, 0.078, -1.193, -0.804, 1.194, -0.121, -0.597,
                                         -0.437, 0.115, 0.762,  1.151,  0.866, -0.582 };
    const Tuning tuning = clocked();
    for (int i = 0; i < 13; ++i)
        EXPECT_NEAR (centsBetween (equalTemperedHz (108 + i), tuning.keyHz (108 + i)),
                     cents[static_cast<std::size_t> (i)], 0.001);

    EXPECT_NEAR (tuning.keyHz (108), 4184.6025, 5e-5);
    EXPECT_NEAR (soundingHz (tuning, 120, "8"), 8369.2050, 5e-5) << "C9 = clock / 239";
    EXPECT_EQ (tuning.chainCount(), 12);
}

// Source: f = 440 2^((key - 69) / 12), ISO 16:1975.
TEST (Tuning, EqualTemperamentHasItsPitches)
{
    const Tuning tuning = Tuning::equalTempered (440.0, 20000.0);
    const std::array<double, 8> octavesOfC { 32.703, 65.406, 130.813, 261.626, 523.251, 1046.502, 2093.005, 4186.009 };
    for (int i = 0; i < 8; ++i)
        EXPECT_NEAR (soundingHz (tuning, 24 + 12 * i, "8"), octavesOfC[static_cast<std::size_t> (i)], 5e-4);

    EXPECT_DOUBLE_EQ (tuning.keyHz (69), 440.0);
    EXPECT_DOUBLE_EQ (tuning.keyHz (-12), equalTemperedHz (-12));
}

TEST (Tuning, FootagesSoundTheirOctaves)
{
    for (const Tuning& tuning : { clocked(), Tuning::equalTempered (440.0, 8400.0) })
    {
        EXPECT_DOUBLE_EQ (soundingHz (tuning, 60, "16"), 0.5 * tuning.keyHz (60));
        EXPECT_DOUBLE_EQ (soundingHz (tuning, 60, "4"), 2.0 * tuning.keyHz (60));
        EXPECT_DOUBLE_EQ (soundingHz (tuning, 60, "1"), 8.0 * tuning.keyHz (60));
        EXPECT_EQ (tuning.generatorFor (60, feet ("4")), tuning.generatorFor (72, feet ("8")))
            << "one generator, shared";
    }
}

// Source: nearest tempered interval less the exact harmonic at C3 = 130.813 Hz.
TEST (Tuning, BorrowedMutationsAreOffByTheTemperedInterval)
{
    const Tuning tuning = Tuning::equalTempered (440.0, 8400.0, MutationSource::borrowed, { feet ("2 2/3") });
    const double c3 = tuning.keyHz (48);
    EXPECT_NEAR (soundingHz (tuning, 48, "2 2/3") - 3.0 * c3, -0.443, 5e-4);
    EXPECT_NEAR (soundingHz (tuning, 48, "1 3/5") - 5.0 * c3, 5.191, 5e-4);
    EXPECT_NEAR (soundingHz (tuning, 48, "1 1/3") - 6.0 * c3, -0.886, 5e-4);
    EXPECT_NEAR (soundingHz (tuning, 48, "1 1/7") - 7.0 * c3, 16.638, 5e-4);
    EXPECT_EQ (tuning.chainCount(), 12);
}

TEST (Tuning, ExactMutationsHaveGeneratorsOfTheirOwn)
{
    const Tuning tuning = Tuning::equalTempered (440.0, 20000.0, MutationSource::exact,
                                                 { feet ("2 2/3"), feet ("1 1/3"), feet ("1 3/5"), feet ("8") });
    EXPECT_EQ (tuning.chainCount(), 36) << "2 2/3 and 1 1/3 share theirs";
    EXPECT_NEAR (soundingHz (tuning, 60, "2 2/3"), 3.0 * tuning.keyHz (60), 1e-9);
    EXPECT_NEAR (soundingHz (tuning, 60, "5 1/3"), 1.5 * tuning.keyHz (60), 1e-9);
    EXPECT_NEAR (soundingHz (tuning, 60, "1 3/5"), 5.0 * tuning.keyHz (60), 1e-9);
    EXPECT_NEAR (soundingHz (tuning, 48, "1 1/7") - 7.0 * tuning.keyHz (48), 16.638, 5e-4) << "not listed: borrowed";
}

TEST (Tuning, ExactMutationsAreWholeRatiosInTime)
{
    const Tuning tuning =
        Tuning::equalTempered (440.0, 9000.0, MutationSource::exact,
                               { feet ("2 2/3"), feet ("1 3/5"), feet ("1 1/7"), feet ("8/9"), feet ("6 2/5") });

    for (const double rateHz : { 44100.0, 176400.0, 192000.0, 384000.0 })
    {
        const auto base = tuning.timeBase (rateHz);
        const auto periodOf = [&] (int key, const char* footage)
        {
            const Generator generator = *tuning.generatorFor (key, feet (footage));
            return base.halfPeriodUnits[static_cast<std::size_t> (generator.chain)] << generator.octavesBelowTop;
        };

        for (int key = 36; key < 48; ++key)
        {
            EXPECT_EQ (periodOf (key, "8"), 3 * periodOf (key, "2 2/3"));
            EXPECT_EQ (periodOf (key, "8"), 5 * periodOf (key, "1 3/5"));
            EXPECT_EQ (periodOf (key, "8"), 7 * periodOf (key, "1 1/7"));
            EXPECT_EQ (periodOf (key, "8"), 9 * periodOf (key, "8/9"));
            EXPECT_EQ (4 * periodOf (key, "8"), 5 * periodOf (key, "6 2/5"));
        }

        for (int chain = 0; chain < tuning.chainCount(); ++chain)
        {
            const auto units = static_cast<double> (base.halfPeriodUnits[static_cast<std::size_t> (chain)]);
            const double hz = 0.5 * rateHz * static_cast<double> (base.unitsPerSample) / units;
            EXPECT_NEAR (hz / tuning.frequencyHz ({ chain, 0 }), 1.0, 1e-12) << chain;
            EXPECT_LT (base.halfPeriodUnits[static_cast<std::size_t> (chain)], std::int64_t { 1 } << 50);
        }
    }
}

// 2.00024 MHz at 48 kHz: 600 / 25003 samples a tick. Source: 48000 / 2000240 in lowest terms.
TEST (Tuning, ClockedTimeIsExact)
{
    const auto base = clocked().timeBase (48000.0);
    for (std::size_t chain = 0; chain < 12; ++chain)
    {
        // Half period of the master in samples: N / 2 ticks; of C9, 239 / 2.
        const std::int64_t divisor = chain == 0 ? 239 : divisors[chain];
        EXPECT_EQ (base.unitsPerSample % 25003, 0);
        EXPECT_EQ (base.halfPeriodUnits[chain] * 2, base.unitsPerSample / 25003 * divisor * 600);
    }
}

TEST (Tuning, FractionalClocksAreRoundedWithinTheirPromise)
{
    const Tuning tuning = Tuning::topOctave (2000240.1234567, divisors, 8, 119);
    const auto base = tuning.timeBase (191999.98765432);
    for (std::size_t chain = 0; chain < 12; ++chain)
    {
        const double samples =
            static_cast<double> (base.halfPeriodUnits[chain]) / static_cast<double> (base.unitsPerSample);
        EXPECT_NEAR (samples * 2.0 * 2000240.1234567 / (191999.98765432 * divisors[chain]), 1.0, 1e-12);
    }
}

TEST (Tuning, TopIsSilentOrBreaksBack)
{
    const Tuning silent = clocked();
    const Tuning back = clocked (TopBehaviour::breakBack);
    EXPECT_TRUE (silent.generatorFor (96, feet ("2")));
    EXPECT_FALSE (silent.generatorFor (97, feet ("2"))) << "C#9 does not exist";
    EXPECT_DOUBLE_EQ (soundingHz (back, 97, "2"), soundingHz (back, 97, "4"));
    EXPECT_DOUBLE_EQ (soundingHz (back, 127, "1"), back.keyHz (115)) << "G as high as it goes";

    const Generator c8 = *silent.generatorFor (108, feet ("8"));
    EXPECT_EQ (silent.octavesAbove (c8, 1), (Generator { 0, 0 }));
    EXPECT_FALSE (silent.octavesAbove (c8, 2));
    EXPECT_EQ (back.octavesAbove (c8, 5), (Generator { 0, 0 }));
}

TEST (Tuning, ThereIsALowestGenerator)
{
    const Tuning tuning = Tuning::equalTempered (440.0, 20000.0);
    EXPECT_TRUE (tuning.generatorFor (24, feet ("16"))) << "C0, 16.35 Hz";
    EXPECT_FALSE (tuning.generatorFor (24, feet ("32")));
    EXPECT_FALSE (tuning.octavesAbove ({ 0, 10 }, -1));
}

TEST (Tuning, HighestKeyBelowTheDividedOctaveLowersTheMasters)
{
    const Tuning tuning = Tuning::topOctave (2000240.0, divisors, 8, 113);
    EXPECT_NEAR (tuning.keyHz (119), 7906.087, 1e-3);
    EXPECT_FALSE (tuning.generatorFor (114, feet ("8")));
    EXPECT_NEAR (soundingHz (tuning, 113, "8"), 5587.2626, 1e-3);
    const auto base = tuning.timeBase (192000.0);
    EXPECT_EQ (base.halfPeriodUnits[6], base.unitsPerSample / 25003 * 338 * 2400) << "F#7 lasts 2 N ticks";
}

// Each 1 1/p needs p + 1 in place of p parts: eight primes of three digits have no common multiple below 2^60.
TEST (Tuning, RefusesMutationsThatCannotRunLockedTogether)
{
    std::vector<Footage> odd;
    for (const char* text : { "1 1/997", "1 1/991", "1 1/983", "1 1/977", "1 1/971", "1 1/967", "1 1/953", "1 1/947" })
        odd.push_back (feet (text));
    EXPECT_THROW (Tuning::equalTempered (440.0, 20000.0, MutationSource::exact, odd).timeBase (192000.0), Error);

    const auto few = Tuning::equalTempered (440.0, 20000.0, MutationSource::exact, { feet ("1 1/97"), feet ("2 2/3") });
    EXPECT_NO_THROW (few.timeBase (192000.0));
}

TEST (Tuning, RefusesWhatNoOrganHas)
{
    EXPECT_THROW (Tuning::equalTempered (0.0, 8000.0), Error);
    EXPECT_THROW (Tuning::equalTempered (440.0, std::nan ("")), Error);
    EXPECT_THROW (Tuning::topOctave (0.0, divisors, 8, 120), Error);
    EXPECT_THROW (Tuning::topOctave (2e6, { 1 }, 8, 120), Error);
    EXPECT_THROW (Tuning::topOctave (2e6, divisors, 8, 140), Error);
    EXPECT_THROW (clocked().timeBase (0.0), Error);
}

} // namespace stopwright

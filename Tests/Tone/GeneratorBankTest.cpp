// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/GeneratorBank.h"

#include "Support/Random.h"
#include "ToneBench.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stopwright
{

namespace
{

const std::vector<Wave> allWaves { Wave {},
                                   Wave { .kind = WaveKind::pulse, .duty = 0.1 },
                                   Wave { .kind = WaveKind::staircase, .ranks = 3 },
                                   Wave { .kind = WaveKind::rounded, .fallTau = 0.2 },
                                   Wave { .kind = WaveKind::triangle },
                                   Wave { .kind = WaveKind::sawtooth },
                                   Wave { .kind = WaveKind::outphased, .outphaseWeight = 0.4 } };

Tuning clocked()
{
    return Tuning::topOctave (2000240.0, toneBench::divisors, 8, 120);
}

std::vector<double> sumOfFootages (GeneratorBank& bank, int key, std::size_t frames)
{
    bank.advance (static_cast<int> (frames));
    std::vector<double> sum (frames);
    for (const char* footage : { "8", "4" })
    {
        const auto wave = bank.wave (0, *bank.tuning().generatorFor (key, Footage::parse (footage)));
        for (std::size_t i = 0; i < frames; ++i)
            sum[i] += static_cast<double> (wave[i]);
    }
    return sum;
}

} // namespace

TEST (GeneratorBank, AnySplitIntoBlocksGivesTheSameSamples)
{
    constexpr std::size_t frames = 6000;
    GeneratorBank whole (clocked(), allWaves, 192000.0, frames);
    GeneratorBank split (clocked(), allWaves, 192000.0, 700);
    Random random (20260101);

    for (int w = 0; w < static_cast<int> (allWaves.size()); ++w)
        for (const Generator generator : { Generator { 0, 0 }, Generator { 4, 2 }, Generator { 9, 6 } })
        {
            whole.restart();
            split.restart();
            const auto expected = toneBench::rendered (whole, w, generator, frames, frames);
            std::size_t at = 0;
            while (at < frames)
            {
                split.advance (std::min (random.integer (0, 700), static_cast<int> (frames - at)));
                for (const float sample : split.wave (w, generator))
                {
                    ASSERT_NEAR (sample, expected[at], 5e-7) << "wave " << w << " frame " << at;
                    ++at;
                }
            }
        }
}

TEST (GeneratorBank, AllSquaresRiseAtTimeZero)
{
    GeneratorBank bank (clocked(), { Wave {} }, 192000.0, 64);
    bank.advance (64);
    for (int chain = 0; chain < 12; ++chain)
        for (int octave = 0; octave < Tuning::octavesPerChain; ++octave)
        {
            const auto wave = bank.wave (0, { chain, octave });
            const auto edge = static_cast<std::size_t> (bank.delayByFrames());
            EXPECT_NEAR (wave[edge], 0.0F, 1e-6F) << "half-way up";
            EXPECT_NEAR (wave[edge - 1], -wave[edge + 1], 1e-6F);
            EXPECT_GT (wave[edge + 2], 0.4F);
        }
}

// After 2^40 or 2^50 samples (at 192 kHz, 66 days or 186 years): back where the phases say, to the last bit.
TEST (GeneratorBank, OctavesStayLockedForEver)
{
    // A4 = 375 Hz: a period of key 69 is 2^9 samples, so any power of two above is a whole number of periods.
    const Tuning tuning = Tuning::equalTempered (375.0, 9000.0);
    GeneratorBank bank (tuning, { Wave {} }, 192000.0, 4096);
    const auto atZero = sumOfFootages (bank, 69, 3072);

    for (const int bits : { 40, 50 })
    {
        bank.jumpTo (std::int64_t { 1 } << bits);
        const auto later = sumOfFootages (bank, 69, 3072);
        EXPECT_EQ (later, atZero) << "2^" << bits;
    }

    bank.jumpTo ((std::int64_t { 1 } << 40) + 1);
    EXPECT_NE (sumOfFootages (bank, 69, 3072), atZero) << "one sample off is told apart";
}

// The pattern of 8 + 4 ft of the real clock repeats after 25003 periods = 2400 N 2^j samples, for ever.
TEST (GeneratorBank, ClockedOctavesRepeatExactly)
{
    GeneratorBank bank (clocked(), { Wave {} }, 192000.0, 2048);
    const auto octaves = [&bank]
    {
        bank.advance (2048);
        const auto low = bank.wave (0, { 4, 3 });
        const auto high = bank.wave (0, { 4, 2 });
        std::vector<float> sum;
        for (std::size_t i = 0; i < low.size(); ++i)
            sum.push_back (low[i] + high[i]);
        return sum;
    };

    const auto atZero = octaves();
    const std::int64_t repeats = 2400LL * 379 * 8;
    bank.jumpTo (repeats * 155000000LL); // past 2^50 samples
    EXPECT_EQ (octaves(), atZero);
    bank.jumpTo (repeats * 155000000LL + 1);
    EXPECT_NE (octaves(), atZero);
}

// A partial that comes by two paths, the third of 8 ft and the first of 2 2/3 ft, keeps its phase relation at any time.
TEST (GeneratorBank, ExactMutationsStayLocked)
{
    const Footage twelfth = Footage::parse ("2 2/3");
    const Tuning tuning = Tuning::equalTempered (440.0, 20000.0, MutationSource::exact, { twelfth });
    GeneratorBank bank (tuning, { Wave { .kind = WaveKind::sawtooth } }, 192000.0, 8192);

    for (const int key : { 60, 65, 71 })
        for (const std::int64_t start :
             { std::int64_t { 0 }, std::int64_t { 1 } << 40, (std::int64_t { 1 } << 50) + 12345 })
        {
            bank.jumpTo (start);
            bank.advance (8192);
            const auto unison = bank.wave (0, *tuning.generatorFor (key, Footage {}));
            const auto third = bank.wave (0, *tuning.generatorFor (key, twelfth));

            // Every rise of the unison is a rise of the twelfth: both jump up by 1 between the same samples.
            int rises = 0;
            for (std::size_t i = 4; i < unison.size() - 4; ++i)
                if (unison[i] > 0.0F && unison[i - 1] <= 0.0F && unison[i + 2] > 0.4F)
                {
                    ++rises;
                    EXPECT_NEAR (third[i] - unison[i], third[i - 1] - unison[i - 1], 0.03F);
                }
            EXPECT_GT (rises, 9);
        }
}

TEST (GeneratorBank, RemainderIsWhatACutLeavesOver)
{
    constexpr int cut = 200;
    GeneratorBank bank (clocked(), allWaves, 192000.0, 512);
    bank.advance (512);
    std::vector<float> left (static_cast<std::size_t> (2 * bank.delayByFrames()));

    // It begins as the wave itself goes on, and ends at zero.
    for (int w = 0; w < static_cast<int> (allWaves.size()); ++w)
    {
        bank.remainder (w, { 2, 3 }, cut, left);
        const auto wave = bank.wave (w, { 2, 3 });
        EXPECT_NEAR (left.front(), wave[cut + 1], 1e-3F) << w;
        EXPECT_NEAR (left.back(), 0.0F, 1e-3F) << w;
    }
}

TEST (GeneratorBank, AsksForNothingThatIsNotThere)
{
    GeneratorBank bank (clocked(), { Wave {} }, 192000.0, 64);
    bank.advance (64);
    EXPECT_TRUE (bank.wave (1, { 0, 0 }).empty());
    EXPECT_TRUE (bank.wave (0, { 12, 0 }).empty());
    EXPECT_TRUE (bank.wave (0, { 0, 11 }).empty());
    EXPECT_EQ (bank.wave (0, { 11, 10 }).size(), 64U);
    bank.advance (0);
    EXPECT_TRUE (bank.wave (0, { 0, 0 }).empty());
}

TEST (GeneratorBank, RefusesWhatItCannotRender)
{
    EXPECT_THROW (GeneratorBank (clocked(), { Wave { .duty = 2.0 } }, 192000.0, 64), Error);
    EXPECT_THROW (GeneratorBank (clocked(), { Wave {} }, 8000.0, 64), Error);
    EXPECT_THROW (GeneratorBank (clocked(), { Wave {} }, 192000.0, 0), Error);
    EXPECT_THROW (GeneratorBank (Tuning::equalTempered (440.0, 30000.0), { Wave {} }, 48000.0, 64), Error);
}

} // namespace stopwright

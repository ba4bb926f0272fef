// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/KeyerBank.h"

#include "Support/Random.h"
#include "ToneBench.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace stopwright
{

namespace
{

constexpr double rateHz = 192000.0;
constexpr int blockFrames = 512;

struct Press
{
    int key = 0;
    int frame = 0;
    bool down = false;
};

/// Plays presses at their frames, in blocks of the sizes that `nextBlock` gives.
template <typename NextBlock>
std::vector<float> played (const KeyerSettings& settings,
                           const Wave& wave,
                           const std::vector<Press>& presses,
                           int frames,
                           NextBlock nextBlock)
{
    GeneratorBank bank (Tuning::topOctave (2000240.0, toneBench::divisors, 8, 120), { wave }, rateHz, frames);
    KeyerBank keyers (bank, 0, Footage {}, settings);
    std::vector<float> bus (static_cast<std::size_t> (frames));

    for (int done = 0; done < frames;)
    {
        const int count = std::min (nextBlock(), frames - done);
        for (const Press& press : presses)
            if (press.frame >= done && press.frame < done + count)
            {
                if (press.down)
                    keyers.keyDown (press.key, press.frame - done);
                else
                    keyers.keyUp (press.key, press.frame - done);
            }

        bank.advance (count);
        keyers.mixInto (std::span (bus).subspan (static_cast<std::size_t> (done), static_cast<std::size_t> (count)),
                        0.25F, bank);
        done += count;
    }
    return bus;
}

float loudest (const std::vector<float>& samples, std::size_t from = 0)
{
    float peak = 0.0F;
    for (std::size_t i = from; i < samples.size(); ++i)
        peak = std::max (peak, std::abs (samples[i]));
    return peak;
}

constexpr auto oneBlockSize = [] { return blockFrames; };

} // namespace

TEST (KeyerBank, AnySplitIntoBlocksGivesTheSameSound)
{
    constexpr int frames = 20000;
    const std::vector<Press> presses { { 60, 0, true },       { 64, 100, true },   { 60, 5000, false },
                                       { 67, 5001, true },    { 60, 5600, true },  { 108, 7000, true },
                                       { 108, 7003, false },  { 108, 7010, true }, { 64, 9999, false },
                                       { 108, 12000, false }, { 60, 19000, false } };
    Random random (4711);

    for (const KeyerShape shape : { KeyerShape::linear, KeyerShape::rc, KeyerShape::contact })
        for (const Wave& wave :
             { Wave {}, Wave { .kind = WaveKind::staircase, .ranks = 3 }, Wave { .kind = WaveKind::rounded } })
        {
            const KeyerSettings settings { .shape = shape, .bleedDb = -60.0 };
            const auto whole = played (settings, wave, presses, frames, [] { return frames; });
            const auto split = played (settings, wave, presses, frames,
                                       [&random] { return random.integer (0, 9) == 0 ? 0 : random.integer (1, 600); });
            EXPECT_GT (loudest (whole), 0.1F);
            for (std::size_t i = 0; i < whole.size(); ++i)
                ASSERT_NEAR (split[i], whole[i], 1e-6F) << static_cast<int> (shape) << " frame " << i;
        }
}

TEST (KeyerBank, AHeldKeyIsItsGenerator)
{
    GeneratorBank bank (Tuning::equalTempered (440.0, 20000.0), { Wave {} }, rateHz, blockFrames);
    KeyerBank keyers (bank, 0, Footage::parse ("4"), {});
    keyers.keyDown (60, 0);
    std::vector<float> bus (blockFrames);
    for (int block = 0; block < 10; ++block)
    {
        std::fill (bus.begin(), bus.end(), 1.0F);
        bank.advance (blockFrames);
        keyers.mixInto (bus, 0.5F, bank);
    }

    const auto wave = bank.wave (0, *bank.tuning().generatorFor (72, Footage {}));
    for (std::size_t i = 0; i < bus.size(); ++i)
        EXPECT_NEAR (bus[i], 1.0F + 0.5F * wave[i], 1e-7F) << "added to what was there";
    EXPECT_EQ (keyers.activeKeys(), 1);
}

TEST (KeyerBank, AllKeysSoundAtOnce)
{
    GeneratorBank bank (Tuning::equalTempered (440.0, 20000.0), { Wave {} }, rateHz, blockFrames);
    KeyerBank keyers (bank, 0, Footage {}, {});
    std::vector<float> expected (blockFrames);
    for (int key = 0; key < KeyerBank::keyCount; ++key)
        keyers.keyDown (key, 0);

    std::vector<float> bus (blockFrames);
    for (int block = 0; block < 10; ++block)
    {
        std::fill (bus.begin(), bus.end(), 0.0F);
        bank.advance (blockFrames);
        keyers.mixInto (bus, 1.0F, bank);
    }

    int sounding = 0;
    for (int key = 0; key < KeyerBank::keyCount; ++key)
        if (const auto generator = bank.tuning().generatorFor (key, Footage {}))
        {
            ++sounding;
            const auto wave = bank.wave (0, *generator);
            for (std::size_t i = 0; i < expected.size(); ++i)
                expected[i] += wave[i];
        }

    EXPECT_EQ (keyers.activeKeys(), sounding);
    EXPECT_GT (sounding, 115);
    for (std::size_t i = 0; i < bus.size(); ++i)
        EXPECT_NEAR (bus[i], expected[i], 2e-5F);
}

TEST (KeyerBank, ComesToRestWithNothingLeftBehind)
{
    for (const KeyerShape shape : { KeyerShape::linear, KeyerShape::rc, KeyerShape::contact })
    {
        GeneratorBank bank (Tuning::equalTempered (440.0, 9000.0), { Wave {} }, rateHz, blockFrames);
        KeyerBank keyers (bank, 0, Footage {}, { .shape = shape });
        std::vector<float> bus (blockFrames);
        keyers.keyDown (60, 17);
        keyers.keyUp (60, 300);

        for (int block = 0; block < 200; ++block)
        {
            std::fill (bus.begin(), bus.end(), 0.0F);
            bank.advance (blockFrames);
            keyers.mixInto (bus, 1.0F, bank);
            for (const float sample : bus)
                ASSERT_NE (std::fpclassify (sample), FP_SUBNORMAL);
        }

        EXPECT_EQ (keyers.activeKeys(), 0);
        EXPECT_EQ (loudest (bus), 0.0F);
    }
}

TEST (KeyerBank, UnplayedKeysBleed)
{
    const auto bus = played ({ .bleedDb = -40.0 }, Wave {}, {}, 4096, oneBlockSize);
    GeneratorBank bank (Tuning::topOctave (2000240.0, toneBench::divisors, 8, 120), { Wave {} }, rateHz, 4096);
    bank.advance (4096);
    std::vector<double> expected (4096);
    for (int key = 0; key < 128; ++key)
        if (const auto generator = bank.tuning().generatorFor (key, Footage {}))
            for (std::size_t i = 0; i < expected.size(); ++i)
                expected[i] += 0.01 * 0.25 * static_cast<double> (bank.wave (0, *generator)[i]);

    for (std::size_t i = 0; i < bus.size(); ++i)
        EXPECT_NEAR (bus[i], expected[i], 1e-6);
    EXPECT_EQ (loudest (played ({}, Wave {}, {}, 4096, oneBlockSize)), 0.0F);
}

TEST (KeyerBank, ReleasedKeysFallBackToTheirBleed)
{
    const KeyerSettings settings { .shape = KeyerShape::contact, .bleedDb = -20.0 };
    GeneratorBank bank (Tuning::equalTempered (440.0, 9000.0), { Wave {} }, rateHz, blockFrames);
    KeyerBank keyers (bank, 0, Footage {}, settings, 60, 60);
    std::vector<float> bus (blockFrames);
    keyers.keyDown (60, 0);
    keyers.keyUp (60, 100);
    bank.advance (blockFrames);
    keyers.mixInto (bus, 1.0F, bank);

    const auto wave = bank.wave (0, *bank.tuning().generatorFor (60, Footage {}));
    for (std::size_t i = 0; i < bus.size(); ++i)
    {
        const bool shut = i == 0 || i > 120;
        const bool open = i > 20 && i < 100;
        if (shut || open)
        {
            EXPECT_NEAR (bus[i], (shut ? 0.1F : 1.0F) * wave[i], 1e-7F) << i;
        }
    }
}

TEST (KeyerBank, KeysWithoutAGeneratorAreSilent)
{
    GeneratorBank bank (Tuning::equalTempered (440.0, 9000.0), { Wave {} }, rateHz, blockFrames);
    KeyerBank keyers (bank, 0, Footage::parse ("1"), {}, 36, 96);
    for (const int key : { -1, 35, 96, 97, 128, 1000 })
        keyers.keyDown (key, 0);

    EXPECT_EQ (keyers.activeKeys(), 0) << "96 at 1 ft would be C10; the others are no keys of the compass";
    keyers.keyDown (84, 0);
    EXPECT_EQ (keyers.activeKeys(), 1);
    keyers.reset();
    EXPECT_EQ (keyers.activeKeys(), 0);
}

TEST (KeyerBank, EventsBeyondTheBlockWait)
{
    GeneratorBank bank (Tuning::equalTempered (440.0, 9000.0), { Wave {} }, rateHz, blockFrames);
    KeyerBank keyers (bank, 0, Footage {}, { .shape = KeyerShape::contact });
    keyers.keyDown (60, 3 * blockFrames + 100);
    std::vector<float> bus (blockFrames);
    for (int block = 0; block < 4; ++block)
    {
        std::fill (bus.begin(), bus.end(), 0.0F);
        bank.advance (blockFrames);
        keyers.mixInto (bus, 1.0F, bank);
        EXPECT_EQ (loudest (bus) > 0.0F, block == 3);
    }
    EXPECT_EQ (bus[100], 0.0F);
    EXPECT_NE (bus[110], 0.0F);
}

TEST (KeyerBank, RefusesKeysThatAreNone)
{
    GeneratorBank bank (Tuning::equalTempered (440.0, 9000.0), { Wave {} }, rateHz, blockFrames);
    EXPECT_THROW (KeyerBank (bank, 0, Footage {}, {}, -1, 127), Error);
    EXPECT_THROW (KeyerBank (bank, 0, Footage {}, {}, 0, 128), Error);
    EXPECT_THROW (KeyerBank (bank, 0, Footage {}, { .attackSeconds = -1.0 }), Error);
}

} // namespace stopwright

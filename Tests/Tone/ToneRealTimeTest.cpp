// SPDX-License-Identifier: GPL-3.0-or-later
#include "Support/AllocationGuard.h"
#include "Support/Random.h"
#include "Tone/KeyerBank.h"
#include "ToneBench.h"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <vector>

namespace stopwright
{

TEST (ToneRealTime, NeitherAllocatesNorLocksNorGoesAstrayUnderRandomKeys)
{
    if (! AllocationGuard::isAvailable)
        GTEST_SKIP() << "the sanitizer has malloc";

    constexpr int maxFrames = 300;
    const Tuning tuning = Tuning::topOctave (2000240.0, toneBench::divisors, 8, 120, TopBehaviour::breakBack);
    const std::vector<Wave> waves { Wave {}, Wave { .kind = WaveKind::staircase, .ranks = 8 },
                                    Wave { .kind = WaveKind::rounded }, Wave { .kind = WaveKind::outphased } };
    GeneratorBank bank (tuning, waves, 192000.0, maxFrames);
    std::vector<std::unique_ptr<KeyerBank>> buses;
    for (int wave = 0; wave < static_cast<int> (waves.size()); ++wave)
        for (const KeyerShape shape : { KeyerShape::linear, KeyerShape::rc, KeyerShape::contact })
            buses.push_back (std::make_unique<KeyerBank> (bank, wave, Footage::parse ("2 2/3"),
                                                          KeyerSettings { .shape = shape, .bleedDb = -60.0 }));

    Random random (31337);
    std::vector<float> bus (maxFrames);
    double peak = 0.0;
    bool finite = true;

    const AllocationGuard guard;
    for (int block = 0; block < 400; ++block)
    {
        const int frames = random.integer (0, maxFrames);
        if (block % 100 == 50)
            bank.jumpTo (static_cast<std::int64_t> (random.bits() >> 14));

        bank.advance (frames);
        std::fill (bus.begin(), bus.end(), 0.0F);
        for (const auto& keyers : buses)
        {
            for (int i = 0; i < 12; ++i)
            {
                const int key = random.integer (-2, 130);
                if (random.chance (0.5))
                    keyers->keyDown (key, random.integer (0, 400));
                else
                    keyers->keyUp (key, random.integer (0, 400));
            }
            keyers->mixInto (std::span (bus).first (static_cast<std::size_t> (frames)), 0.01F, bank);
        }

        for (const float sample : bus)
        {
            finite = finite && std::isfinite (sample);
            peak = std::max (peak, std::abs (static_cast<double> (sample)));
        }
    }
    const auto allocations = guard.allocations() + guard.releases();
    const auto locks = guard.locks();

    EXPECT_EQ (allocations, 0U);
    EXPECT_EQ (locks, 0U);
    EXPECT_TRUE (finite);
    EXPECT_GT (peak, 0.01);
    EXPECT_LT (peak, 12.0 * 128.0 * 0.01);
}

} // namespace stopwright

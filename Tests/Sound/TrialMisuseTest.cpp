// SPDX-License-Identifier: GPL-3.0-or-later
//
// Two trials flipped over and over while keys are held: the audio thread may not allocate, free or lock.
#include "Sound/Engine.h"

#include "Sound/TestCards.h"
#include "Support/AllocationGuard.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstddef>

namespace stopwright::test
{

TEST (TrialMisuse, TheFlipIsRealTimeSafe)
{
    if (! AllocationGuard::isAvailable)
        GTEST_SKIP() << "a sanitizer has malloc";
    const std::array cards { presetCard ("Krummhorn8"), presetCard ("Oboe8") };
    Engine engine;
    engine.prepare ({ .deviceRateHz = 48000.0, .maxFrames = 64 });
    for (const int key : { 48, 60, 64, 67 })
        engine.key (key, true);

    std::array<float, 64> left {};
    float* const channels[] = { left.data() };
    std::size_t count = 0;
    float peak = 0.0F;
    for (std::size_t turn = 0; turn < 60; ++turn)
    {
        const Card& card = cards[turn % 2];
        engine.setCard (card, keySourceForCardAlone (card), turn == 0, turn % 2 == 0 ? 0.0 : -7.5);
        for (int block = 0; block < 60; ++block) // the fade takes 37 of them
        {
            if (block == 45)
                engine.setTrialGainDb (-3.0);
            const AllocationGuard guard;
            engine.process ({}, channels, 64);
            count += guard.allocations() + guard.releases() + guard.locks();
            peak = std::max (peak, left[0]);
        }
    }
    EXPECT_EQ (count, 0U);
    EXPECT_GT (peak, 0.0F);
}

} // namespace stopwright::test

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ClipLatch.h"

#include <gtest/gtest.h>

namespace stopwright
{

TEST (ClipLatch, ALampStaysLitUntilItIsPutOut)
{
    ClipLatch latch;
    latch.watch ({ "Preamp: Gain", "Preamp: Driver" });
    EXPECT_EQ (latch.litCount(), 0);
    EXPECT_TRUE (latch.take (0b10));
    EXPECT_FALSE (latch.take (0));
    EXPECT_FALSE (latch.isLit (0));
    EXPECT_TRUE (latch.isLit (1));
    EXPECT_FALSE (latch.take (0b10)); // no news
    EXPECT_TRUE (latch.take (0b01));
    EXPECT_EQ (latch.litCount(), 2);
    latch.putOut (1);
    EXPECT_TRUE (latch.isLit (0));
    EXPECT_FALSE (latch.isLit (1));
    latch.putAllOut();
    EXPECT_EQ (latch.litCount(), 0);
}

TEST (ClipLatch, BitsWithoutAStageLightNothing)
{
    ClipLatch latch;
    EXPECT_FALSE (latch.take (~std::uint64_t { 0 }));
    latch.watch ({ "Gain" });
    EXPECT_TRUE (latch.take (~std::uint64_t { 0 }));
    EXPECT_EQ (latch.litCount(), 1);
    EXPECT_FALSE (latch.isLit (64));
    EXPECT_FALSE (latch.isLit (-1));
    latch.watch (std::vector<std::string> (64, "Stage"));
    EXPECT_TRUE (latch.take (~std::uint64_t { 0 }));
    EXPECT_EQ (latch.litCount(), 64);
}

TEST (ClipLatch, AnotherInstrumentBeginsWithEveryLampOut)
{
    ClipLatch latch;
    latch.watch ({ "Gain" });
    latch.take (1);
    latch.watch ({ "Gain" });
    EXPECT_FALSE (latch.isLit (0));
}

} // namespace stopwright

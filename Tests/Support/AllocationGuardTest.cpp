// SPDX-License-Identifier: GPL-3.0-or-later
#include "Support/AllocationGuard.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <memory>
#include <mutex>
#include <shared_mutex>
#include <thread>
#include <vector>

namespace stopwright
{

namespace
{

/// Keeps the optimiser from pairing an allocation with its release and dropping both.
void* volatile escape = nullptr;

class AllocationGuardTest : public ::testing::Test
{
protected:
    void SetUp() override
    {
        if (! AllocationGuard::isAvailable)
            GTEST_SKIP() << "the sanitizer has malloc";
    }
};

} // namespace

TEST_F (AllocationGuardTest, SeesNothingWhereNothingHappens)
{
    std::vector<double> samples (64, 1.0);
    const AllocationGuard guard;
    for (auto& sample : samples)
        sample *= 0.5;

    const auto allocations = guard.allocations();
    const auto releases = guard.releases();
    const auto locks = guard.locks();
    EXPECT_EQ (allocations, 0U);
    EXPECT_EQ (releases, 0U);
    EXPECT_EQ (locks, 0U);
    EXPECT_EQ (samples.front(), 0.5);
}

TEST_F (AllocationGuardTest, CatchesTheCFamily)
{
    const AllocationGuard guard;
    escape = std::malloc (10);
    escape = std::realloc (escape, 1000);
    std::free (escape);
    escape = std::calloc (10, 10);
    std::free (escape);
    escape = std::aligned_alloc (64, 128);
    std::free (escape);

    const auto allocations = guard.allocations();
    const auto releases = guard.releases();
    EXPECT_EQ (allocations, 4U);
    EXPECT_EQ (releases, 3U);
}

TEST_F (AllocationGuardTest, CatchesNewAndContainers)
{
    const AllocationGuard guard;
    auto* number = new int (1);
    escape = number;
    delete number;
    const auto afterNew = guard.allocations();

    std::vector<int> grown;
    grown.push_back (1);
    escape = grown.data();
    const auto afterVector = guard.allocations();

    EXPECT_EQ (afterNew, 1U);
    EXPECT_EQ (afterVector, 2U);
}

TEST_F (AllocationGuardTest, CatchesLocks)
{
    std::mutex mutex;
    std::shared_mutex shared;
    const AllocationGuard guard;
    {
        const std::scoped_lock lock (mutex);
        const std::shared_lock reader (shared);
    }
    const std::unique_lock attempt (mutex, std::try_to_lock);
    const auto locks = guard.locks();
    EXPECT_EQ (locks, 3U);
    EXPECT_TRUE (attempt.owns_lock());
}

TEST_F (AllocationGuardTest, CountsItsOwnThreadOnly)
{
    std::size_t elsewhere = 0;
    std::thread other;
    const AllocationGuard guard;
    const auto before = guard.allocations();
    other = std::thread (
        [&elsewhere]
        {
            const AllocationGuard own;
            for (int i = 0; i < 100; ++i)
            {
                escape = std::malloc (10);
                std::free (escape);
            }
            elsewhere = own.allocations();
        });
    other.join();
    const auto here = guard.allocations() - before;

    EXPECT_EQ (elsewhere, 100U);
    EXPECT_LT (here, 10U) << "starting a thread takes a few";
}

} // namespace stopwright

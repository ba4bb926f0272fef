// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>

namespace stopwright
{

/// Counts what the calling thread does, from here on, that an audio thread must not do: allocate, free, lock.
///
/// Linking stopwright_allocation_guard replaces malloc and its family and the mutex calls of the whole test program, so
/// that allocations inside libraries count too, not only operator new. Read the counts before the next EXPECT: a failing
/// one allocates. Threading: counts are per thread; a guard is read on the thread that made it.
class AllocationGuard
{
public:
    /// False under a sanitizer, which replaces malloc itself: skip the test then.
    static const bool isAvailable;

    AllocationGuard() noexcept;

    /// Calls of malloc, calloc, realloc, aligned_alloc, posix_memalign, memalign.
    std::size_t allocations() const noexcept;

    /// Calls of free with something to free.
    std::size_t releases() const noexcept;

    /// Calls of pthread_mutex_lock and _trylock, pthread_rwlock_rdlock and _wrlock: what std::mutex and its kin come to.
    std::size_t locks() const noexcept;

    struct Counts
    {
        std::size_t allocations = 0;
        std::size_t releases = 0;
        std::size_t locks = 0;
    };

private:
    Counts start_;
};

} // namespace stopwright

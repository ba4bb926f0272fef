// SPDX-License-Identifier: GPL-3.0-or-later
#include "Support/AllocationGuard.h"

#include <dlfcn.h>
#include <pthread.h>

#include <cerrno>

namespace stopwright
{

namespace
{

// Plain data, so that touching it never constructs or allocates.
thread_local AllocationGuard::Counts counts;

} // namespace

#ifdef STOPWRIGHT_SANITIZED
const bool AllocationGuard::isAvailable = false;
#else
const bool AllocationGuard::isAvailable = true;
#endif

AllocationGuard::AllocationGuard() noexcept : start_ (counts) {}

std::size_t AllocationGuard::allocations() const noexcept
{
    return counts.allocations - start_.allocations;
}

std::size_t AllocationGuard::releases() const noexcept
{
    return counts.releases - start_.releases;
}

std::size_t AllocationGuard::locks() const noexcept
{
    return counts.locks - start_.locks;
}

} // namespace stopwright

#ifndef STOPWRIGHT_SANITIZED

// The GNU C library lets a program define malloc and its family, and offers its own under these names.
// Source: The GNU C Library manual, 3.2.5 Replacing malloc
extern "C"
{
    void* __libc_malloc (std::size_t size);
    void* __libc_calloc (std::size_t count, std::size_t size);
    void* __libc_realloc (void* memory, std::size_t size);
    void* __libc_memalign (std::size_t alignment, std::size_t size);
    void __libc_free (void* memory);

    void* malloc (std::size_t size) noexcept
    {
        ++stopwright::counts.allocations;
        return __libc_malloc (size);
    }

    void* calloc (std::size_t count, std::size_t size) noexcept
    {
        ++stopwright::counts.allocations;
        return __libc_calloc (count, size);
    }

    void* realloc (void* memory, std::size_t size) noexcept
    {
        ++stopwright::counts.allocations;
        return __libc_realloc (memory, size);
    }

    void* memalign (std::size_t alignment, std::size_t size) noexcept
    {
        ++stopwright::counts.allocations;
        return __libc_memalign (alignment, size);
    }

    void* aligned_alloc (std::size_t alignment, std::size_t size) noexcept
    {
        return memalign (alignment, size);
    }

    int posix_memalign (void** memory, std::size_t alignment, std::size_t size) noexcept
    {
        *memory = memalign (alignment, size);
        return *memory == nullptr ? ENOMEM : 0;
    }

    void free (void* memory) noexcept
    {
        if (memory != nullptr)
            ++stopwright::counts.releases;
        __libc_free (memory);
    }
}

namespace
{

/// The next definition of a function that this file replaces, looked up once.
template <typename Function>
Function* original (const char* name) noexcept
{
    return reinterpret_cast<Function*> (dlsym (RTLD_NEXT, name));
}

} // namespace

extern "C"
{
    int pthread_mutex_lock (pthread_mutex_t* mutex) noexcept
    {
        static auto* const next = original<int (pthread_mutex_t*)> ("pthread_mutex_lock");
        ++stopwright::counts.locks;
        return next (mutex);
    }

    int pthread_mutex_trylock (pthread_mutex_t* mutex) noexcept
    {
        static auto* const next = original<int (pthread_mutex_t*)> ("pthread_mutex_trylock");
        ++stopwright::counts.locks;
        return next (mutex);
    }

    int pthread_rwlock_rdlock (pthread_rwlock_t* lock) noexcept
    {
        static auto* const next = original<int (pthread_rwlock_t*)> ("pthread_rwlock_rdlock");
        ++stopwright::counts.locks;
        return next (lock);
    }

    int pthread_rwlock_wrlock (pthread_rwlock_t* lock) noexcept
    {
        static auto* const next = original<int (pthread_rwlock_t*)> ("pthread_rwlock_wrlock");
        ++stopwright::counts.locks;
        return next (lock);
    }
}

#endif

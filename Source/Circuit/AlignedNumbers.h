// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <new>
#include <vector>

namespace stopwright
{

/// Allocator that starts every array on a cache line, so that no vector of numbers straddles two.
template <typename Value>
struct CacheLineAllocator
{
    using value_type = Value; // NOLINT(readability-identifier-naming): the standard's name

    static constexpr std::align_val_t lineBytes { 64 };

    CacheLineAllocator() = default;

    template <typename Other>
    CacheLineAllocator (const CacheLineAllocator<Other>&) noexcept // NOLINT(google-explicit-constructor): must convert
    {}

    Value* allocate (std::size_t count)
    {
        return static_cast<Value*> (::operator new (count * sizeof (Value), lineBytes));
    }

    void deallocate (Value* memory, std::size_t) noexcept { ::operator delete (memory, lineBytes); }

    friend bool operator== (const CacheLineAllocator&, const CacheLineAllocator&) noexcept { return true; }
};

/// Numbers that vector code reads and writes.
using AlignedNumbers = std::vector<double, CacheLineAllocator<double>>;

} // namespace stopwright

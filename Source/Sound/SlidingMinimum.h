// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace stopwright
{

/// The least of the last `length` values, in constant time each on the average: a queue that keeps only values that may
/// yet become the least. Before `length` values came, the least of those that did.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
/// Source: D. Lemire, Streaming maximum-minimum filter, Nordic J. Computing 13 (2006) 328 (from memory)
class SlidingMinimum
{
public:
    explicit SlidingMinimum (std::size_t length);

    double push (double value) noexcept;
    void reset() noexcept;

private:
    struct Entry
    {
        double value = 0.0;
        std::uint64_t time = 0;
    };

    Entry& entry (std::uint64_t index) noexcept { return entries_[index & mask_]; }

    std::size_t length_;
    std::uint64_t mask_;
    std::uint64_t time_ = 0;
    std::uint64_t first_ = 0; ///< entries first_ .. end_ - 1 stand in the ring, rising in value and time
    std::uint64_t end_ = 0;
    std::vector<Entry> entries_;
};

} // namespace stopwright

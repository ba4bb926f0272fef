// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/LatestValues.h"

namespace stopwright
{

static_assert (std::atomic<double>::is_always_lock_free && std::atomic<bool>::is_always_lock_free);

void LatestValues::put (std::size_t index, double value) noexcept
{
    Box& box = boxes_[index];
    box.wasUsed = true;
    box.value.store (value, std::memory_order_relaxed);
    box.isFresh.store (true, std::memory_order_release);
    notice_.store (true, std::memory_order_release);
}

bool LatestValues::takeNotice() noexcept
{
    return notice_.load (std::memory_order_relaxed) && notice_.exchange (false, std::memory_order_acq_rel);
}

std::optional<double> LatestValues::take (std::size_t index) noexcept
{
    // The flag goes down before the value is read: a value put in between is read now and announced once more.
    Box& box = boxes_[index];
    if (! box.isFresh.exchange (false, std::memory_order_acq_rel))
        return {};
    return box.value.load (std::memory_order_relaxed);
}

std::optional<double> LatestValues::lastPut (std::size_t index) const noexcept
{
    const Box& box = boxes_[index];
    if (! box.wasUsed)
        return {};
    return box.value.load (std::memory_order_relaxed);
}

} // namespace stopwright

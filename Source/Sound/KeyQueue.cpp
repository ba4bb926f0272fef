// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/KeyQueue.h"

namespace stopwright
{

// The counters only ever grow and wrap together with size_t, of which the capacity is a divisor.
static_assert ((KeyQueue::capacity & (KeyQueue::capacity - 1)) == 0);

bool KeyQueue::push (KeyMessage message) noexcept
{
    const auto written = written_.load (std::memory_order_relaxed);
    if (written - read_.load (std::memory_order_acquire) == capacity)
        return false;
    messages_[written % capacity] = message;
    written_.store (written + 1, std::memory_order_release);
    return true;
}

std::optional<KeyMessage> KeyQueue::pop() noexcept
{
    const auto read = read_.load (std::memory_order_relaxed);
    if (read == written_.load (std::memory_order_acquire))
        return {};
    const KeyMessage message = messages_[read % capacity];
    read_.store (read + 1, std::memory_order_release);
    return message;
}

void KeyQueue::clear() noexcept
{
    read_.store (written_.load (std::memory_order_acquire), std::memory_order_release);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/KeyEvent.h"

#include <array>
#include <atomic>
#include <cstddef>
#include <optional>

namespace stopwright
{

/// What the window tells the audio thread about keys.
struct KeyMessage
{
    static constexpr int allKeys = -1; ///< with down == false: every key goes up

    int key = 0;
    bool down = true;
    int keyboard = Keyboard::ofDivision (0);
};

/// Carries key messages from one thread to one other in order, and says so when there is no room.
/// Threading: push on one [control] thread, pop on [audio]; neither ever waits.
/// Source: L. Lamport, Proving the correctness of multiprocess programs, IEEE TSE 3 (1977) 125 (from memory)
class KeyQueue
{
public:
    static constexpr std::size_t capacity = 1024;

    bool push (KeyMessage message) noexcept;
    std::optional<KeyMessage> pop() noexcept;

    /// Neither thread may be at work. Threading: [control]
    void clear() noexcept;

private:
    // Each counter on a cache line of its own, so that the two threads do not take it from each other.
    alignas (64) std::atomic<std::size_t> written_ { 0 };
    alignas (64) std::atomic<std::size_t> read_ { 0 };
    alignas (64) std::array<KeyMessage, capacity> messages_ {};
};

} // namespace stopwright

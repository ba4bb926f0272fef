// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <bitset>

namespace stopwright
{

/// Which keys are down. Threading: [audio]
class HeldKeys
{
public:
    static constexpr int keyCount = 128; ///< key numbers are MIDI numbers

    /// True when that is a change. Keys out of range are never down.
    bool change (int key, bool down) noexcept;

    bool isDown (int key) const noexcept;

    /// The keys of `other`, as far as they lie in a compass.
    void copyWithin (const HeldKeys& other, int lowestKey, int highestKey) noexcept;

    void clear() noexcept { keys_.reset(); }

private:
    std::bitset<keyCount> keys_;
};

} // namespace stopwright

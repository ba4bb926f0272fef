// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/HeldKeys.h"

#include <array>

namespace stopwright
{

/// Who holds each key: it is down as long as anybody holds it, and goes up when the last one lets go. Threading: [audio].
class KeyHolders
{
public:
    static constexpr int holderCount = 32;

    /// Returns whether the key goes down or up by that. Keys and holders out of range hold nothing.
    bool change (int key, int holder, bool down) noexcept;

    bool isHeldBy (int key, int holder) const noexcept;

    bool isDown (int key) const noexcept;

    /// Who holds a key, a bit each.
    unsigned holdersOf (int key) const noexcept;

    void clear() noexcept { holders_.fill (0); }

private:
    std::array<unsigned, HeldKeys::keyCount> holders_ {}; ///< one bit for each holder
};

} // namespace stopwright

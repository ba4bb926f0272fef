// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/HeldKeys.h"

namespace stopwright
{

namespace
{

bool isKey (int key) noexcept
{
    return key >= 0 && key < HeldKeys::keyCount;
}

} // namespace

bool HeldKeys::change (int key, bool down) noexcept
{
    if (! isKey (key) || isDown (key) == down)
        return false;
    keys_[static_cast<std::size_t> (key)] = down;
    return true;
}

bool HeldKeys::isDown (int key) const noexcept
{
    return isKey (key) && keys_[static_cast<std::size_t> (key)];
}

void HeldKeys::copyWithin (const HeldKeys& other, int lowestKey, int highestKey) noexcept
{
    for (int key = 0; key < keyCount; ++key)
        keys_[static_cast<std::size_t> (key)] = key >= lowestKey && key <= highestKey && other.isDown (key);
}

} // namespace stopwright

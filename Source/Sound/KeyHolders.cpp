// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/KeyHolders.h"

namespace stopwright
{

namespace
{

bool isInRange (int key, int holder) noexcept
{
    return key >= 0 && key < HeldKeys::keyCount && holder >= 0 && holder < KeyHolders::holderCount;
}

unsigned bitOf (int holder) noexcept
{
    return 1U << static_cast<unsigned> (holder);
}

} // namespace

bool KeyHolders::change (int key, int holder, bool down) noexcept
{
    if (! isInRange (key, holder))
        return false;
    unsigned& holders = holders_[static_cast<std::size_t> (key)];
    const bool wasDown = holders != 0;
    holders = down ? holders | bitOf (holder) : holders & ~bitOf (holder);
    return wasDown != (holders != 0);
}

bool KeyHolders::isHeldBy (int key, int holder) const noexcept
{
    return isInRange (key, holder) && (holders_[static_cast<std::size_t> (key)] & bitOf (holder)) != 0;
}

unsigned KeyHolders::holdersOf (int key) const noexcept
{
    return isInRange (key, 0) ? holders_[static_cast<std::size_t> (key)] : 0;
}

bool KeyHolders::isDown (int key) const noexcept
{
    return isInRange (key, 0) && holders_[static_cast<std::size_t> (key)] != 0;
}

} // namespace stopwright

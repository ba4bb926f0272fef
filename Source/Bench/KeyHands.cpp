// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/KeyHands.h"

#include <utility>

namespace stopwright
{

bool KeyHands::isDown (int key) const noexcept
{
    if (key < 0 || key >= static_cast<int> (keyCount))
        return false;
    const auto index = static_cast<std::size_t> (key);
    return mouse_[index] || typing_[index] || latched_[index];
}

void KeyHands::setHeld (int key, std::bitset<keyCount>& hand, bool isHeld)
{
    if (key < 0 || key >= static_cast<int> (keyCount))
        return;
    const auto index = static_cast<std::size_t> (key);
    if (hand[index] == isHeld)
        return;
    hand[index] = isHeld;
    if (isHeld && isHoldOn_)
        latched_.flip (index);
    // Striking a latched key lets it go at once, though the hand is still on it.
    if (isHeld && isHoldOn_ && ! latched_[index])
        hand[index] = false;
    flush();
    if (isHeld && isDown (key) && onKeyDown)
        onKeyDown (key);
}

void KeyHands::press (int key, Hand hand)
{
    setHeld (key, of (hand), true);
}

void KeyHands::release (int key, Hand hand)
{
    setHeld (key, of (hand), false);
}

void KeyHands::setHold (bool isOn)
{
    isHoldOn_ = isOn;
    if (! isOn)
        latched_.reset();
    flush();
}

void KeyHands::releaseAll()
{
    mouse_.reset();
    typing_.reset();
    latched_.reset();
    if (engine_.releaseAllKeys())
        sent_.reset();
}

void KeyHands::flush()
{
    // Another sound device begins with every key up.
    if (const int preparations = engine_.preparations(); std::exchange (preparations_, preparations) != preparations)
        sent_.reset();
    for (std::size_t index = 0; index < keyCount; ++index)
    {
        const bool wanted = isDown (static_cast<int> (index));
        if (wanted != sent_[index] && engine_.key (static_cast<int> (index), wanted))
            sent_[index] = wanted;
    }
}

} // namespace stopwright

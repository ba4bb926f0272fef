// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/KeyHands.h"

#include <utility>

namespace stopwright
{

bool KeyHands::isWanted (std::size_t division, std::size_t key) const noexcept
{
    return latched_[division][key] || (division == division_ && (mouse_[key] || typing_[key]));
}

bool KeyHands::isDown (int key) const noexcept
{
    return key >= 0 && key < static_cast<int> (keyCount) && isWanted (division_, static_cast<std::size_t> (key));
}

void KeyHands::setDivision (int division)
{
    if (division < 0 || division >= static_cast<int> (divisionCount))
        return;
    mouse_.reset();
    typing_.reset();
    division_ = static_cast<std::size_t> (division);
    flush();
}

void KeyHands::setHeld (int key, Keys& hand, bool isHeld)
{
    if (key < 0 || key >= static_cast<int> (keyCount))
        return;
    const auto index = static_cast<std::size_t> (key);
    if (hand[index] == isHeld)
        return;
    hand[index] = isHeld;
    if (isHeld && isHoldOn_)
        latched_[division_].flip (index);
    // Striking a latched key lets it go at once, though the hand is still on it.
    if (isHeld && isHoldOn_ && ! latched_[division_][index])
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
        latched_.fill ({});
    flush();
}

void KeyHands::releaseAll()
{
    mouse_.reset();
    typing_.reset();
    latched_.fill ({});
    if (engine_.releaseAllKeys())
        sent_.fill ({});
}

void KeyHands::flush()
{
    // Another sound device begins with every key up.
    if (const int preparations = engine_.preparations(); std::exchange (preparations_, preparations) != preparations)
        sent_.fill ({});
    for (std::size_t division = 0; division < divisionCount; ++division)
    {
        for (std::size_t index = 0; index < keyCount; ++index)
        {
            const bool wanted = isWanted (division, index);
            if (wanted != sent_[division][index]
                && engine_.key (static_cast<int> (index), wanted, static_cast<int> (division)))
                sent_[division][index] = wanted;
        }
    }
}

bool KeyHands::isHeld (int division, int key) const noexcept
{
    const auto index = static_cast<std::size_t> (division);
    return division >= 0 && index < divisionCount && key >= 0 && static_cast<std::size_t> (key) < keyCount
           && isWanted (index, static_cast<std::size_t> (key));
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/Engine.h"

#include <array>
#include <bitset>
#include <functional>

namespace stopwright
{

/// The keys that are held in the window: by the mouse, by typing keys, or latched by Hold. A key sounds while any of
/// them holds it. Threading: [control].
class KeyHands
{
public:
    enum class Hand
    {
        mouse,
        typing
    };

    explicit KeyHands (Engine& engine) : engine_ (engine) {}

    void press (int key, Hand hand);
    void release (int key, Hand hand);

    /// With Hold on, a key that is struck stays down until it is struck again; switching Hold off lets all go.
    void setHold (bool isOn);

    bool isHoldOn() const noexcept { return isHoldOn_; }

    bool isDown (int key) const noexcept;

    void releaseAll();

    /// Sends what the queue to the audio thread had no room for. Call it a few times a second.
    void flush();

    /// Told when a key went down, with its number.
    std::function<void (int)> onKeyDown;

private:
    static constexpr std::size_t keyCount = 128;

    void setHeld (int key, std::bitset<keyCount>& hand, bool isHeld);

    std::bitset<keyCount>& of (Hand hand) noexcept { return hand == Hand::mouse ? mouse_ : typing_; }

    Engine& engine_;
    std::bitset<keyCount> mouse_;
    std::bitset<keyCount> typing_;
    std::bitset<keyCount> latched_;
    std::bitset<keyCount> sent_;
    bool isHoldOn_ = false;
    int preparations_ = 0; ///< of the engine, when keys were last sent
};

} // namespace stopwright

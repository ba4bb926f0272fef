// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/Engine.h"
#include "Sound/KeyEvent.h"

#include <array>
#include <bitset>
#include <functional>

namespace stopwright
{

/// The keys that are held in the window: by the mouse, by typing keys, or latched by Hold. A key sounds while any of
/// them holds it. The hands are on the keyboard of one division at a time; what is latched on another stays down.
/// Threading: [control].
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

    /// Moves the hands to the keyboard of another division, where no key is down but latched ones.
    void setDivision (int division);

    int division() const noexcept { return static_cast<int> (division_); }

    /// Of the division in hand.
    bool isDown (int key) const noexcept;

    /// On the keyboard of any division.
    bool isHeld (int division, int key) const noexcept;

    void releaseAll();

    /// Sends what the queue to the audio thread had no room for. Call it a few times a second.
    void flush();

    /// Told when a key went down, with its number.
    std::function<void (int)> onKeyDown;

private:
    static constexpr std::size_t keyCount = 128;
    static constexpr std::size_t divisionCount = Keyboard::midiChannels;
    using Keys = std::bitset<keyCount>;

    bool isWanted (std::size_t division, std::size_t key) const noexcept;
    void setHeld (int key, Keys& hand, bool isHeld);

    Keys& of (Hand hand) noexcept { return hand == Hand::mouse ? mouse_ : typing_; }

    Engine& engine_;
    std::size_t division_ = 0;
    Keys mouse_;
    Keys typing_;
    std::array<Keys, divisionCount> latched_;
    std::array<Keys, divisionCount> sent_;
    bool isHoldOn_ = false;
    int preparations_ = 0; ///< of the engine, when keys were last sent
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/KeyHands.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <array>

namespace stopwright
{

/// The computer's keyboard as an organ keyboard: the row of A plays the naturals from C, the row above it the sharps;
/// N and M move it by an octave. Threading: message thread.
class TypingKeys
{
public:
    static constexpr std::array<char, 17> characters { 'a', 'w', 's', 'e', 'd', 'f', 't', 'g', 'y',
                                                       'h', 'u', 'j', 'k', 'o', 'l', 'p', ';' };

    explicit TypingKeys (KeyHands& hands) : hands_ (hands) {}

    /// Key number of the C that "A" plays.
    int base() const noexcept { return base_; }

    /// Keeps the typed keys within the compass.
    void setCompass (int lowestKey, int highestKey);

    /// The character that plays a key, or 0.
    char characterFor (int key) const noexcept;

    /// To be called on every change of the computer's keys; returns whether one of them was for us.
    bool update (bool mayPress);

    bool takeOctaveKey (const juce::KeyPress& key);
    void releaseAll();

private:
    KeyHands& hands_;
    int base_ = 60;
    int lowestKey_ = 36;
    int highestKey_ = 96;
    std::array<int, characters.size()> sounding_ = filledWithNone();

    static constexpr int none = -1;

    static constexpr std::array<int, characters.size()> filledWithNone()
    {
        std::array<int, characters.size()> keys {};
        keys.fill (none);
        return keys;
    }
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// Where keys come from, by number: MIDI channels 1 .. 16 first, then the window's keyboards, one for each division.
struct Keyboard
{
    static constexpr int midiChannels = 16;
    static constexpr int count = 2 * midiChannels;

    static constexpr int ofChannel (int channel) noexcept { return channel - 1; }

    static constexpr int ofDivision (int division) noexcept { return midiChannels + division; }
};

/// A key going down or up, `frameOffset` device frames into a block. Key numbers are MIDI numbers (C4 = 60).
struct KeyEvent
{
    int frameOffset = 0;
    int key = 60;
    bool down = true;
    int keyboard = Keyboard::ofChannel (1);
};

} // namespace stopwright

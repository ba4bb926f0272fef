// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// A key going down or up, `frameOffset` device frames into a block. Key numbers are MIDI numbers (C4 = 60).
struct KeyEvent
{
    int frameOffset = 0;
    int key = 60;
    bool down = true;
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/KeyEvent.h"
#include "Sound/Voice.h"

#include <algorithm>
#include <span>

namespace stopwright
{

/// Runs a block in pieces of Voice::pieceFrames: key (event, frame of the piece) for the events in a piece, then
/// piece (start, count). Events outside the block are taken at its ends; a block without frames has no pieces.
/// Threading: [audio] no allocation, no lock.
template <typename OnKey, typename OnPiece>
void runInPieces (std::span<const KeyEvent> events, int frameCount, OnKey key, OnPiece piece) noexcept
{
    for (int start = 0; start < frameCount; start += Voice::pieceFrames)
    {
        const int count = std::min (Voice::pieceFrames, frameCount - start);
        for (const KeyEvent& event : events)
        {
            const int frame = std::clamp (event.frameOffset, 0, frameCount - 1) - start;
            if (frame >= 0 && frame < count)
                key (event, frame);
        }
        piece (start, count);
    }
}

} // namespace stopwright

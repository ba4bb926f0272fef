// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/SheetGrid.h"

namespace stopwright
{

/// How a symbol lies: first mirrored top to bottom if at all, then turned clockwise by quarters. Unturned, a part of two
/// leads lies with its first lead to the left. Threading: [any].
struct SymbolPose
{
    int quarterTurns = 0; ///< 0 .. 3
    bool isMirrored = false;

    bool operator== (const SymbolPose&) const = default;

    DrawingPoint apply (DrawingPoint at) const noexcept { return turned (at); }

    GridPoint apply (GridPoint at) const noexcept { return turned (at); }

    /// Whether a part of two leads stands.
    bool isUpright() const noexcept { return quarterTurns % 2 == 1; }

private:
    template <typename Point>
    Point turned (Point at) const noexcept
    {
        if (isMirrored)
            at.y = -at.y;
        for (int turn = 0; turn < quarterTurns; ++turn)
            at = { -at.y, at.x };
        return at;
    }
};

} // namespace stopwright

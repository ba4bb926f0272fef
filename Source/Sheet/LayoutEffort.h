// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cstddef>

namespace stopwright
{

/// What looking for wires may still cost on one card: counted and not timed, so that the same card always gives the same
/// sheet. A card that anyone would draw stays far below it; a tangle of hundreds of parts spends it. It falls with the
/// size of the card, because a large sheet costs time elsewhere too.
struct LayoutEffort
{
    static constexpr std::size_t usualElements = 72; ///< taps, parts and the output; with more there is less for each

    long steps = 5'000'000; ///< visits to a point of the grid

    static LayoutEffort forElements (std::size_t count)
    {
        LayoutEffort effort;
        effort.steps =
            effort.steps * static_cast<long> (usualElements) / static_cast<long> (std::max (usualElements, count));
        return effort;
    }

    bool isSpent() const noexcept { return steps <= 0; }
};

} // namespace stopwright

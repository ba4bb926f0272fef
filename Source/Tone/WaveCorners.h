// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/Wave.h"

#include <array>

namespace stopwright
{

/// One period of a wave made of straight lines: at each corner it jumps, changes its slope, or both.
struct WaveCorners
{
    struct Corner
    {
        double phase = 0.0;       ///< 0 .. 1, in periods
        double jump = 0.0;        ///< volts
        double slopeChange = 0.0; ///< volts per period
        double value = 0.0;       ///< just after the corner
        double slope = 0.0;       ///< after the corner, volts per period
    };

    std::array<Corner, 2> corners {};
    int count = 0;

    /// Corners of a square, pulse, triangle, sawtooth or outphased wave in order of phase, the first at 0.
    /// A staircase or rounded wave has none: count is 0. Threading: [any].
    static WaveCorners of (const Wave& wave) noexcept;
};

} // namespace stopwright

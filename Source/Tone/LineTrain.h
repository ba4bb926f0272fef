// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>

namespace stopwright
{

/// Straight lines one after the other, period after period: what is between the corners of a wave.
struct LineTrain
{
    struct Line
    {
        std::int64_t units = 0; ///< how long it is, may be none
        double value = 0.0;     ///< where it begins
        double perUnit = 0.0;   ///< slope
    };

    std::array<Line, 2> lines {}; ///< not both of them empty
    int first = 0;                ///< the one that the first frame is on
    std::int64_t since = 1;       ///< time units from its beginning to the first frame, 1 .. units of that line
    std::int64_t unitsPerSample = 1;

    /// drawLines may write as many frames behind the last.
    static constexpr int overrun = 7;
};

/// Writes `count` frames of the train. One right at a corner is on the line before it.
/// Threading: [audio] no allocation, no lock.
void drawLines (float* block, int count, const LineTrain& train) noexcept;

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/LineRenderer.h"
#include "Tone/Tuning.h"

#include <cstdint>
#include <vector>

namespace stopwright
{

/// Where every chain of an instrument is at the start of a block: how many half periods of its master have gone by, and
/// how far it is into the next. Divider j is high while bit j of that count is 0, so at time 0 every square rises.
///
/// Whole numbers throughout: nothing is ever rounded, at any time.
/// Threading: construct on [control]; the rest [audio] no allocation, no lock.
class ChainClocks
{
public:
    explicit ChainClocks (Tuning::TimeBase timeBase);

    std::int64_t unitsPerSample() const noexcept { return timeBase_.unitsPerSample; }

    void moveOn (int frames) noexcept;
    void jumpTo (std::int64_t frame) noexcept;

    /// Phase of a generator at the start of the block. An octave is one bit of the count.
    PeriodPhase phaseOf (Generator generator) const noexcept;

    /// As 64-bit fraction of a period, rounded down: `phase` of that instant, or a time in units.
    static std::uint64_t periodFraction (std::int64_t units, std::int64_t period) noexcept;

private:
    struct Position
    {
        std::int64_t halfPeriods = 0;
        std::int64_t units = 0;
    };

    Tuning::TimeBase timeBase_;
    std::vector<Position> positions_;
};

} // namespace stopwright

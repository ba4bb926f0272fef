// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/ChainClocks.h"

#include <utility>

namespace stopwright
{

namespace
{

__extension__ using Wide = __int128;
__extension__ using UnsignedWide = unsigned __int128;

} // namespace

ChainClocks::ChainClocks (Tuning::TimeBase timeBase)
    : timeBase_ (std::move (timeBase)),
      positions_ (timeBase_.halfPeriodUnits.size())
{}

void ChainClocks::moveOn (int frames) noexcept
{
    const std::int64_t units = frames * timeBase_.unitsPerSample;

    for (std::size_t chain = 0; chain < positions_.size(); ++chain)
    {
        const std::int64_t halfPeriod = timeBase_.halfPeriodUnits[chain];
        Position& position = positions_[chain];
        position.units += units;
        position.halfPeriods += position.units / halfPeriod;
        position.units %= halfPeriod;
    }
}

void ChainClocks::jumpTo (std::int64_t frame) noexcept
{
    const Wide units = static_cast<Wide> (frame) * timeBase_.unitsPerSample;

    for (std::size_t chain = 0; chain < positions_.size(); ++chain)
    {
        const Wide halfPeriod = timeBase_.halfPeriodUnits[chain];
        Wide whole = units / halfPeriod;
        Wide rest = units % halfPeriod;
        if (rest < 0)
        {
            rest += halfPeriod;
            --whole;
        }
        positions_[chain] = { static_cast<std::int64_t> (whole), static_cast<std::int64_t> (rest) };
    }
}

PeriodPhase ChainClocks::phaseOf (Generator generator) const noexcept
{
    const auto chain = static_cast<std::size_t> (generator.chain);
    const std::int64_t halfPeriod = timeBase_.halfPeriodUnits[chain];
    const std::int64_t halvesPerPeriod = std::int64_t { 2 } << generator.octavesBelowTop;
    const std::int64_t halvesGone = positions_[chain].halfPeriods & (halvesPerPeriod - 1);
    return { halvesPerPeriod * halfPeriod, halvesGone * halfPeriod + positions_[chain].units };
}

std::uint64_t ChainClocks::periodFraction (std::int64_t units, std::int64_t period) noexcept
{
    return static_cast<std::uint64_t> ((static_cast<UnsignedWide> (units) << 64) / static_cast<UnsignedWide> (period));
}

} // namespace stopwright

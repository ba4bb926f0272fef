// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/TempoMap.h"

#include <algorithm>
#include <iterator>

namespace stopwright
{

namespace
{

double secondsPerTick (int microsecondsPerQuarter, const MidiTimeBase& timeBase)
{
    constexpr double microsecond = 1e-6;
    return microsecond * microsecondsPerQuarter / timeBase.ticksPerQuarter;
}

} // namespace

TempoMap::TempoMap (const StandardMidiFile& file)
{
    const auto& timeBase = file.timeBase;
    if (timeBase.ticksPerQuarter == 0)
    {
        sections_.push_back ({ 0, 0.0, 1.0 / timeBase.ticksPerSecond });
        return;
    }

    sections_.push_back ({ 0, 0.0, secondsPerTick (MidiTempo().microsecondsPerQuarter, timeBase) });
    for (const auto& tempo : file.tempos)
    {
        const double seconds = secondsAt (tempo.tick);
        if (tempo.tick == sections_.back().tick)
            sections_.pop_back(); // of tempos at one time the last holds
        sections_.push_back ({ tempo.tick, seconds, secondsPerTick (tempo.microsecondsPerQuarter, timeBase) });
    }
}

double TempoMap::secondsAt (std::int64_t tick) const
{
    const auto later =
        std::upper_bound (sections_.begin(), sections_.end(), tick,
                          [] (std::int64_t wanted, const Section& section) { return wanted < section.tick; });
    const auto& section = *std::prev (later);
    return section.seconds + static_cast<double> (tick - section.tick) * section.secondsPerTick;
}

} // namespace stopwright

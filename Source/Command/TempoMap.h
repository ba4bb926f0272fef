// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/StandardMidiFile.h"

#include <cstdint>
#include <vector>

namespace stopwright
{

/// When each tick of a MIDI file is, in seconds from the beginning. A file without a tempo runs at 120 quarters a minute.
///
/// Threading: [control]. Source: Standard MIDI Files 1.0, MIDI Manufacturers Association, 1988 (RP-001)
class TempoMap
{
public:
    explicit TempoMap (const StandardMidiFile& file);

    /// tick >= 0.
    double secondsAt (std::int64_t tick) const;

private:
    struct Section
    {
        std::int64_t tick = 0;
        double seconds = 0.0;
        double secondsPerTick = 0.0;
    };

    std::vector<Section> sections_; ///< in time order, the first at tick 0
};

} // namespace stopwright

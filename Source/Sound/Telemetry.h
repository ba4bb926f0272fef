// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

namespace stopwright
{

/// What the audio thread last reported. Peaks and loads are since the previous call of Engine::telemetry.
struct Telemetry
{
    double peakVolts = 0.0;          ///< at the output of card or instrument
    double peakFullScale = 0.0;      ///< at the device, 1 = full scale
    double rmsFullScaleDb = -200.0;  ///< short-term, at the device
    double limiterReductionDb = 0.0; ///< >= 0; peak limiter and loudness ceiling together
    double loadFraction = 0.0;       ///< worst block: time used / time of the block
    std::uint64_t clips = 0;         ///< stages that have clipped, a bit each (InstrumentVoice::clipNames)
    int soundingKeys = 0;
    int lastKey = -1;             ///< last key that went down, -1 for none yet
    bool silencedByFault = false; ///< a non-finite sample came up; silent until the next card is set
    bool knobsMoving = false;
};

} // namespace stopwright

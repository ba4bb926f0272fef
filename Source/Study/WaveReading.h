// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/BenchWave.h"
#include "Study/MeterReadings.h"
#include "Study/ScopeSetting.h"

#include <span>
#include <vector>

namespace stopwright
{

/// One key at a place as scope and meters show it, nothing connected that loads it.
struct WaveReading
{
    int key = 60;
    double keyHz = 0.0;
    BenchWave wave; ///< no waves when no generator sounds for the key
    MeterReadings meters;

    bool isSilent() const noexcept { return wave.waves.empty(); }

    /// Several waves are of pitches that drift against each other: they never repeat together, and what is shown is the
    /// moment in which all of their generators rise at time zero.
    bool neverRepeats() const noexcept { return wave.waves.size() > 1; }

    ScopeSetting automatic() const noexcept;

    /// The lowest and the highest volts between two times in seconds, either sign; on a stretch shorter than the wave's
    /// own steps both are taken from the straight line between them. Threading: [any].
    struct Span
    {
        double lowest = 0.0;
        double highest = 0.0;
    };

    Span between (double fromSeconds, double toSeconds) const noexcept;

    /// Volts at a time. Threading: [any].
    double at (double seconds) const noexcept;
};

/// Threading: [control]. Fails: Error on a key outside 0 .. 127.
WaveReading waveReading (const BenchPoint& point, int key);

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/Telemetry.h"

#include <atomic>
#include <cstdint>

namespace stopwright
{

/// Where the audio thread writes its readings and the window reads them. Peaks keep the highest until they are read.
/// Threading: report on [audio], take on one other thread; neither ever waits. A reading may mix two blocks.
class TelemetryBoard
{
public:
    void report (const Telemetry& block) noexcept;
    Telemetry take() noexcept;

    /// Whether the sound is silenced because of a fault; takes nothing. Threading: [any].
    bool isSilenced() const noexcept { return silencedByFault_.load (std::memory_order_relaxed); }

    /// As after construction. Neither thread may be at work.
    void clear() noexcept;

private:
    std::atomic<double> peakVolts_ { 0.0 };
    std::atomic<double> peakFullScale_ { 0.0 };
    std::atomic<double> rmsFullScaleDb_ { -200.0 };
    std::atomic<double> limiterReductionDb_ { 0.0 };
    std::atomic<double> loadFraction_ { 0.0 };
    std::atomic<std::uint64_t> clips_ { 0 };
    std::atomic<int> soundingKeys_ { 0 };
    std::atomic<int> lastKey_ { -1 };
    std::atomic<bool> silencedByFault_ { false };
    std::atomic<bool> knobsMoving_ { false };
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/TelemetryBoard.h"

namespace stopwright
{

namespace
{

/// Only the reader ever lowers a peak, and seldom: the loop ends after two rounds.
void keepHighest (std::atomic<double>& peak, double value) noexcept
{
    double before = peak.load (std::memory_order_relaxed);
    while (value > before && ! peak.compare_exchange_weak (before, value, std::memory_order_relaxed))
    {}
}

} // namespace

void TelemetryBoard::report (const Telemetry& block) noexcept
{
    keepHighest (peakVolts_, block.peakVolts);
    keepHighest (peakFullScale_, block.peakFullScale);
    keepHighest (limiterReductionDb_, block.limiterReductionDb);
    keepHighest (loadFraction_, block.loadFraction);
    rmsFullScaleDb_.store (block.rmsFullScaleDb, std::memory_order_relaxed);
    if (block.clips != 0)
        clips_.fetch_or (block.clips, std::memory_order_relaxed);
    soundingKeys_.store (block.soundingKeys, std::memory_order_relaxed);
    silencedByFault_.store (block.silencedByFault, std::memory_order_relaxed);
    knobsMoving_.store (block.knobsMoving, std::memory_order_relaxed);
    if (block.lastKey >= 0)
        lastKey_.store (block.lastKey, std::memory_order_relaxed);
}

Telemetry TelemetryBoard::take() noexcept
{
    return { .peakVolts = peakVolts_.exchange (0.0, std::memory_order_relaxed),
             .peakFullScale = peakFullScale_.exchange (0.0, std::memory_order_relaxed),
             .rmsFullScaleDb = rmsFullScaleDb_.load (std::memory_order_relaxed),
             .limiterReductionDb = limiterReductionDb_.exchange (0.0, std::memory_order_relaxed),
             .loadFraction = loadFraction_.exchange (0.0, std::memory_order_relaxed),
             .clips = clips_.exchange (0, std::memory_order_relaxed),
             .soundingKeys = soundingKeys_.load (std::memory_order_relaxed),
             .lastKey = lastKey_.load (std::memory_order_relaxed),
             .silencedByFault = silencedByFault_.load (std::memory_order_relaxed),
             .knobsMoving = knobsMoving_.load (std::memory_order_relaxed) };
}

void TelemetryBoard::clear() noexcept
{
    take();
    const Telemetry fresh;
    rmsFullScaleDb_.store (fresh.rmsFullScaleDb, std::memory_order_relaxed);
    soundingKeys_.store (fresh.soundingKeys, std::memory_order_relaxed);
    lastKey_.store (fresh.lastKey, std::memory_order_relaxed);
    silencedByFault_.store (fresh.silencedByFault, std::memory_order_relaxed);
    knobsMoving_.store (fresh.knobsMoving, std::memory_order_relaxed);
}

} // namespace stopwright

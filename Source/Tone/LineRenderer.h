// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/LineTrain.h"
#include "Tone/StepKernel.h"
#include "Tone/WaveCorners.h"

#include <cstdint>

namespace stopwright
{

/// Where a generator is in its period, in whole time units.
struct PeriodPhase
{
    std::int64_t period = 1;
    std::int64_t phase = 0; ///< 0 .. period - 1

    PeriodPhase shifted (std::int64_t units) const noexcept;
};

/// Renders waves made of straight lines: the lines themselves, delayed by half the kernel, and at every corner what the
/// band-limited step and ramp differ by. It keeps nothing between calls, so any split into blocks gives the same samples.
/// Threading: construct on [control]; the rest [audio] no allocation, no lock.
class LineRenderer
{
public:
    LineRenderer (const StepKernel& kernel, std::int64_t unitsPerSample) noexcept;

    /// Writes `count` frames; `start` is the phase at the first. `block` must allow taps() frames before it and behind.
    void render (const WaveCorners& wave, PeriodPhase start, int count, float* block) const noexcept;

    /// Writes taps() frames: what comes out after the frame with phase `cut`, at which the wave is cut off dead.
    void remainder (const WaveCorners& wave, PeriodPhase cut, float* block) const noexcept;

private:
    std::int64_t offsetOf (const WaveCorners& wave, int corner, std::int64_t period) const noexcept;
    LineTrain linesFrom (const WaveCorners& wave, PeriodPhase start) const noexcept;
    void addCorners (const WaveCorners& wave, PeriodPhase start, std::int64_t endFrame, float* block) const noexcept;

    const StepKernel* kernel_;
    std::int64_t unitsPerSample_;
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/CycleTable.h"
#include "Tone/LineRenderer.h"
#include "Tone/StepKernel.h"
#include "Tone/Tuning.h"
#include "Tone/Wave.h"

#include <memory>
#include <vector>

namespace stopwright
{

/// Renders one rounded wave of all generators from cycle tables: with time constants in periods generators share them, octave
/// by octave; with time constants in seconds each has its own.
///
/// Harmonics end at or below half the rate (below rate - 20 kHz at rates under 80 kHz, so that none of the audible ones
/// is lost) and at the 8192nd. What lies above is not there to be cut by a contact either.
/// Threading: construct on [control]; immutable, the rest [audio] no allocation, no lock.
class RoundedCycles
{
public:
    RoundedCycles (const Wave& wave,
                   const Tuning& tuning,
                   double sampleRateHz,
                   const StepKernel& kernel,
                   std::int64_t unitsPerSample);

    /// Writes `count` frames, late by half the kernel; `start` is the phase at the first.
    void render (Generator generator, PeriodPhase start, int count, float* out) const noexcept;

    /// Writes taps() frames: what comes out after the frame with phase `cut`, at which the wave is cut off dead.
    /// `out` must allow taps() frames before it and behind.
    void remainder (Generator generator, PeriodPhase cut, float* out) const noexcept;

private:
    const CycleTable& of (Generator generator) const noexcept;

    const StepKernel* kernel_;
    std::int64_t unitsPerSample_;
    std::vector<std::shared_ptr<const CycleTable>> tables_; ///< chain by chain, from its master down
};

} // namespace stopwright

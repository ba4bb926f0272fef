// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/StepKernel.h"

#include <cstdint>

namespace stopwright
{

/// Equal corners at equal distances in time: one corner of a wave, period after period.
struct EdgeTrain
{
    std::int64_t frame = 0;        ///< whole frames from the start of the block to the next corner, may be negative
    std::int64_t fraction = 0;     ///< and time units beyond, 0 .. unitsPerSample - 1
    std::int64_t stepFrames = 0;   ///< one period
    std::int64_t stepFraction = 0; ///< and units beyond
    std::int64_t unitsPerSample = 1;
};

/// Adds height times the residuals of all corners of the train before `endFrame` to `block`. A corner at frame f touches
/// the taps() frames after f, so `block` must allow taps() frames before its start and after endFrame.
/// Threading: [audio] no allocation, no lock.
void addResiduals (float* block,
                   std::int64_t endFrame,
                   EdgeTrain train,
                   const float* rows,
                   int taps,
                   float height) noexcept;

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/EdgeTrain.h"

#include "Units/WideVector.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// `tapsKnown` as a constant lets the compiler unroll the usual length; 0 takes `tapsGiven`.
template <int tapsKnown>
[[gnu::always_inline]] inline void addAll (float* block,
                                           std::int64_t endFrame,
                                           EdgeTrain train,
                                           const float* rows,
                                           int tapsGiven,
                                           float height) noexcept
{
    const int taps = tapsKnown > 0 ? tapsKnown : tapsGiven;
    const double rowsPerUnit = static_cast<double> (StepKernel::phases) / static_cast<double> (train.unitsPerSample);

    while (train.frame < endFrame)
    {
        const double place = static_cast<double> (train.fraction) * rowsPerUnit;
        const int row = std::min (static_cast<int> (place), StepKernel::phases - 1);
        const float between = height * static_cast<float> (place - row);
        const float* values = rows + static_cast<std::ptrdiff_t> (row) * 2 * taps;
        const float* differences = values + taps;
        float* out = block + train.frame + 1;

        for (int k = 0; k < taps; ++k)
            out[k] += height * values[k] + between * differences[k];

        train.frame += train.stepFrames;
        train.fraction += train.stepFraction;
        if (train.fraction >= train.unitsPerSample)
        {
            train.fraction -= train.unitsPerSample;
            ++train.frame;
        }
    }
}

} // namespace

STOPWRIGHT_WIDE
void addResiduals (float* block,
                   std::int64_t endFrame,
                   EdgeTrain train,
                   const float* rows,
                   int taps,
                   float height) noexcept
{
    if (taps == 16)
        addAll<16> (block, endFrame, train, rows, taps, height);
    else
        addAll<0> (block, endFrame, train, rows, taps, height);
}

} // namespace stopwright

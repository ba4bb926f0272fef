// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/MixLoops.h"

#include "Units/WideVector.h"

namespace stopwright
{

STOPWRIGHT_WIDE
void addScaled (float* __restrict out, const float* __restrict in, float gain, int count) noexcept
{
    for (int i = 0; i < count; ++i)
        out[i] += gain * in[i];
}

STOPWRIGHT_WIDE
void addShaped (float* __restrict out,
                const float* __restrict in,
                const float* __restrict gains,
                float gain,
                int count) noexcept
{
    for (int i = 0; i < count; ++i)
        out[i] += gain * gains[i] * in[i];
}

STOPWRIGHT_WIDE
void addWeighted (float* __restrict out, const float* const* in, const float* gains, int sources, int count) noexcept
{
    // Four at a time: the sum goes through memory once for four sources.
    int s = 0;
    for (; s + 4 <= sources; s += 4)
    {
        const float* __restrict a = in[s];
        const float* __restrict b = in[s + 1];
        const float* __restrict c = in[s + 2];
        const float* __restrict d = in[s + 3];
        const float gainA = gains[s];
        const float gainB = gains[s + 1];
        const float gainC = gains[s + 2];
        const float gainD = gains[s + 3];

        for (int i = 0; i < count; ++i)
            out[i] += (gainA * a[i] + gainB * b[i]) + (gainC * c[i] + gainD * d[i]);
    }

    for (; s < sources; ++s)
    {
        const float* __restrict a = in[s];
        const float gainA = gains[s];
        for (int i = 0; i < count; ++i)
            out[i] += gainA * a[i];
    }
}

} // namespace stopwright

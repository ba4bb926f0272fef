// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/MixLoops.h"

#include "Units/WideVector.h"

#include <array>
#include <cstddef>
#include <utility>

namespace stopwright
{

namespace
{

template <std::size_t... source>
[[gnu::always_inline]] inline void addTogether (std::index_sequence<source...>,
                                                float* __restrict out,
                                                const float* const* in,
                                                const float* gains,
                                                int count) noexcept
{
    // Copies, since `out` might lie over the gains and pointers for all that the compiler knows.
    const std::array<const float*, sizeof...(source)> from { in[source]... };
    const std::array<float, sizeof...(source)> gain { gains[source]... };
    for (int i = 0; i < count; ++i)
        out[i] += (... + (gain[source] * from[source][i]));
}

} // namespace

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
    // Eight at a time: the sum goes through memory once for eight sources.
    int s = 0;
    for (; s + 8 <= sources; s += 8)
        addTogether (std::make_index_sequence<8>(), out, in + s, gains + s, count);
    if (s + 4 <= sources)
    {
        addTogether (std::make_index_sequence<4>(), out, in + s, gains + s, count);
        s += 4;
    }
    for (; s < sources; ++s)
        addTogether (std::make_index_sequence<1>(), out, in + s, gains + s, count);
}

} // namespace stopwright

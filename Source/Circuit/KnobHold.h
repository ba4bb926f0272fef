// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>

namespace stopwright
{

/// While a knob moves, the matrices stand still for no longer than this: the steps of a sine through the ramp then lie
/// more than 60 dB below it.
inline constexpr double longestHoldSeconds = 1e-4;

/// For how many samples they stand still: the longest power of two within that time, 16 at 176.4 and 192 kHz.
inline int holdSamples (double sampleRateHz) noexcept
{
    constexpr int most = 1024;
    int samples = 1;
    while (2 * samples <= longestHoldSeconds * sampleRateHz && samples < most)
        samples *= 2;
    return samples;
}

/// In how many such steps a ramp of `seconds` runs.
inline int rampStepsWithin (double seconds, double sampleRateHz) noexcept
{
    return std::max (1, static_cast<int> (seconds * sampleRateHz / holdSamples (sampleRateHz)));
}

} // namespace stopwright

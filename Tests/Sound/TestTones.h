// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Support/Random.h"

#include <algorithm>
#include <cstddef>
#include <span>
#include <vector>

namespace stopwright::test
{

/// amplitude sin (2 pi cycles i / period + phase), from i = 0: repeats after `period` samples with whole cycles.
std::vector<double>
    sine (std::size_t length, long long cycles, long long period, double amplitude = 1.0, double phase = 0.3);

/// The highest component of 20 Hz .. 20 kHz that is no multiple of the `cycles`-th bin, in dB re that bin; the samples
/// hold whole cycles.
double worstAliasDb (std::span<const double> samples, std::size_t cycles, double rateHz);

/// The samples run through `processor` in place, as one block.
template <typename Processor>
std::vector<double> throughWhole (Processor& processor, std::vector<double> samples)
{
    processor.process (samples);
    return samples;
}

/// The same in blocks of 0 .. 200.
template <typename Processor>
std::vector<double> throughPieces (Processor& processor, std::vector<double> samples, Random& random)
{
    for (std::size_t start = 0; start < samples.size();)
    {
        const auto count = std::min (static_cast<std::size_t> (random.integer (0, 200)), samples.size() - start);
        processor.process (std::span (samples).subspan (start, count));
        start += count;
    }
    return samples;
}

/// Even in -peak .. peak.
std::vector<double> noise (std::size_t length, double peak, Random& random);

} // namespace stopwright::test

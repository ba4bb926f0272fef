// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/GeneratorBank.h"

#include <algorithm>
#include <array>
#include <vector>

namespace stopwright::toneBench
{

// Divisors of the usual top-octave set. Source: data sheet values as passed on by synthesiser builders.
inline constexpr std::array<int, 12> divisors { 478, 451, 426, 402, 379, 358, 338, 319, 301, 284, 268, 253 };

/// `count` frames of one generator from the bank's present time on, in blocks of `blockFrames`.
inline std::vector<double>
    rendered (GeneratorBank& bank, int wave, Generator generator, std::size_t count, int blockFrames)
{
    std::vector<double> out;
    while (out.size() < count)
    {
        const auto left = count - out.size();
        bank.advance (static_cast<int> (std::min (left, static_cast<std::size_t> (blockFrames))));
        const auto block = bank.wave (wave, generator);
        out.insert (out.end(), block.begin(), block.end());
    }
    return out;
}

} // namespace stopwright::toneBench

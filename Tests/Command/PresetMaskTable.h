// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace stopwright
{

/// How far a partial may be from its mask: common practice, from memory, no source.
inline constexpr double maskToleranceDb = 6.0;

struct MaskWish
{
    int harmonic = 1;
    double levelDb = 0.0;
    bool atMost = false; ///< the level is an upper bound, not a centre
};

/// What a card's C4 should be like. Levels are re one harmonic, or re the strongest when referenceHarmonic is 0.
struct PresetMask
{
    std::string file;
    int referenceHarmonic = 1;
    std::vector<MaskWish> wishes;
};

const std::vector<PresetMask>& presetMasks();

} // namespace stopwright

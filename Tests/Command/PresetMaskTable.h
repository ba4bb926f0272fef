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

/// What one key of a card should be like, C4 unless it is a pedal stop. Levels are re one harmonic, or re the strongest
/// when referenceHarmonic is 0.
struct PresetMask
{
    std::string file;
    int referenceHarmonic = 1;
    std::vector<MaskWish> wishes;
    double unison = 1.0; ///< harmonic 1 of the mask, in harmonics of the key's 8 ft pitch: 2 for a 4 ft stop
    int key = 60;        ///< MIDI number
};

const std::vector<PresetMask>& presetMasks();

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/MaskFit.h"

#include <string>
#include <vector>

namespace stopwright
{

/// Where one entry of a mask wants the tone of a key to be, on the scale of its harmonic bars: dB re the strongest
/// partial of the tone, the best gain offset taken into the wish.
struct MaskWindow
{
    std::string name; ///< "harmonic 3", or the band's name
    bool isBand = false;
    bool isBound = false;   ///< an upper bound: lowestDb is minus infinity
    double lowestHz = 0.0;  ///< of a band; of a harmonic both are its partial's
    double highestHz = 0.0; ///<
    double lowestDb = 0.0;
    double highestDb = 0.0;
    MaskEntryFit fit;
};

/// A target mask beside the bars of one key. Entries that say nothing about the key, or lie above 20 kHz, are left out.
struct MaskReading
{
    std::string name;
    Certainty certainty = Certainty::commonPractice;
    std::string source;
    bool isForKey = true; ///< whether the mask as a whole is meant for the key
    MaskFit fit;
    std::vector<MaskWindow> windows; ///< harmonics first, then bands
};

/// Threading: [control].
MaskReading maskReading (const TargetMask& mask, const MaskedTone& tone);

} // namespace stopwright

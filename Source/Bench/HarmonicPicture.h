// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/HarmonicTable.h"

#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// What is drawn of one key: every partial of the source and of the result.
struct HarmonicPicture
{
    struct Bar
    {
        double harmonic = 0.0; ///< counted from the key's 8 ft pitch
        double frequencyHz = 0.0;
        double sourceDb = 0.0; ///< re the strongest partial of the source
        double resultDb = 0.0; ///< re the strongest partial of the result
        double sourcePeakVolts = 0.0;
        double resultPeakVolts = 0.0;
        bool isAbsent = false; ///< not in the source: no network can bring it out
    };

    int key = -1;
    double keyHz = 0.0;
    std::vector<Bar> bars; ///< in ascending frequency
    int strongest = -1;    ///< in bars, of the result
    double lossDb = 0.0;   ///< strongest of the result re strongest of the source
    std::string refusal;   ///< why there is no picture; empty when there is one
};

/// A partial this far below the strongest of its source counts as absent.
inline constexpr double absentBelowDb = -110.0;

/// Threading: [any], it touches nothing but its arguments. A card that cannot be computed gives a refusal.
HarmonicPicture harmonicPictureOf (const Card& card, const KeySource& keySource, int key);

} // namespace stopwright

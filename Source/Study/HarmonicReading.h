// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/BenchPoint.h"
#include "Study/MaskReading.h"

#include <optional>
#include <vector>

namespace stopwright
{

/// Every partial of one key up to 20 kHz, in the waves that are tapped and at the place looked at, and a target beside
/// them.
struct HarmonicReading
{
    struct Bar
    {
        double harmonic = 0.0; ///< counted from the key's 8 ft pitch
        double frequencyHz = 0.0;
        double sourceDb = 0.0; ///< re the strongest partial of the source
        double resultDb = 0.0; ///< re the strongest partial of the result; -infinity for none
        double sourcePeakVolts = 0.0;
        double resultPeakVolts = 0.0;
        bool isAbsent = false; ///< not in the source: no network can bring it out
    };

    int key = 60;
    double keyHz = 0.0;
    std::vector<Bar> bars; ///< in ascending frequency
    int strongest = -1;    ///< in bars, of the result; -1 when nothing sounds
    double lossDb = 0.0;   ///< strongest of the result re strongest of the source
    std::optional<MaskReading> mask;
};

/// A partial this far below the strongest of its source counts as absent.
inline constexpr double absentBelowDb = -110.0;

/// Without bars when no generator sounds for the key. `mask` may be null.
/// Threading: [control]. Fails: Error on a key outside 0 .. 127.
HarmonicReading harmonicReading (const BenchPoint& point, int key, const TargetMask* mask);

} // namespace stopwright

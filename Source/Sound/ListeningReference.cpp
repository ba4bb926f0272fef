// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/ListeningReference.h"

#include "Study/HarmonicTable.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

double referenceVolts (const Card& card, const KeySource& keySource)
{
    constexpr int middleC = 60;
    const int key = std::clamp (middleC, keySource.lowestKey, std::max (keySource.lowestKey, keySource.highestKey));

    double meanSquare = 0.0;
    for (const HarmonicRow& row : harmonicTable (card, keySource, key))
        meanSquare += 0.5 * row.outputPeakVolts * row.outputPeakVolts;

    return std::max (lowestReferenceVolts, std::sqrt (meanSquare));
}

} // namespace stopwright

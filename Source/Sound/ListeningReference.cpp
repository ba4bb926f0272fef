// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/ListeningReference.h"

#include "Study/HarmonicTable.h"

#include <algorithm>

namespace stopwright
{

double referenceVolts (const Card& card, const KeySource& keySource)
{
    constexpr int middleC = 60;
    const int key = std::clamp (middleC, keySource.lowestKey, std::max (keySource.lowestKey, keySource.highestKey));

    return std::max (lowestReferenceVolts, rmsVolts (harmonicTable (card, keySource, key)));
}

} // namespace stopwright

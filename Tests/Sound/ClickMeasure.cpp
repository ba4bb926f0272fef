// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/ClickMeasure.h"

#include "Sound/KaiserLowpass.h"
#include "Sound/TestCards.h"
#include "Units/Decibels.h"

#include <vector>

namespace stopwright::test
{

double residueAboveSixKilohertz (std::span<const double> samples, double rateHz)
{
    const auto low =
        kaiserLowpass ({ .passEdge = 5500.0 / rateHz, .stopEdge = 6000.0 / rateHz, .attenuationDb = 120.0 });
    const auto half = low.size() / 2;
    std::vector<double> high;
    for (std::size_t i = half; i + half < samples.size(); ++i)
    {
        double sum = 0.0;
        for (std::size_t k = 0; k < low.size(); ++k)
            sum += low[k] * samples[i + half - k];
        high.push_back (samples[i] - sum);
    }
    return toDecibels (peakOf (high) / peakOf (samples));
}

} // namespace stopwright::test

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/HarmonicAxis.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

float HarmonicAxis::xOf (double frequencyHz) const
{
    const double place = std::log (frequencyHz / lowestHz) / std::log (highestHz / lowestHz);
    return plot.getX() + static_cast<float> (place) * plot.getWidth();
}

float HarmonicAxis::yOf (double levelDb) const
{
    const double place = (highestDb - std::clamp (levelDb, lowestDb, highestDb)) / (highestDb - lowestDb);
    return plot.getY() + static_cast<float> (place) * plot.getHeight();
}

double HarmonicAxis::frequencyAt (float x) const
{
    return lowestHz * std::pow (highestHz / lowestHz, static_cast<double> ((x - plot.getX()) / plot.getWidth()));
}

} // namespace stopwright

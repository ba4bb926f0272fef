// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/TrialComparison.h"

#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

double powerBy (LevelMeasure measure, const TonePower& power) noexcept
{
    return measure == LevelMeasure::rms ? power.plain : power.aWeighted;
}

} // namespace

double TrialComparison::levelDbOfA (LevelMeasure measure) const noexcept
{
    return toDecibels (std::sqrt (powerBy (measure, a)));
}

double TrialComparison::levelDbOfB (LevelMeasure measure) const noexcept
{
    return toDecibels (std::sqrt (powerBy (measure, b)));
}

double TrialComparison::differenceDb (LevelMeasure measure) const noexcept
{
    const double ofA = powerBy (measure, a);
    const double ofB = powerBy (measure, b);
    return ofA > 0.0 && ofB > 0.0 ? toDecibels (std::sqrt (ofB / ofA)) : 0.0;
}

double TrialComparison::gainDbOfA (LevelMeasure measure) const noexcept
{
    return std::min (0.0, differenceDb (measure));
}

double TrialComparison::gainDbOfB (LevelMeasure measure) const noexcept
{
    return std::min (0.0, -differenceDb (measure));
}

} // namespace stopwright

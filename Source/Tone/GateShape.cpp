// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/GateShape.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double corner = 0.25;
constexpr int curvePoints = 4096;

/// Integral of the speed (1 - cos (pi u / c)) / 2 up to the end of the first corner, then of 1; scaled to end at 1.
double lineWithCorners (double part) noexcept
{
    if (part > 0.5)
        return 1.0 - lineWithCorners (1.0 - part);

    const double pi = std::numbers::pi;
    const double way =
        part < corner ? 0.5 * part - 0.5 * corner / pi * std::sin (pi * part / corner) : part - 0.5 * corner;
    return way / (1.0 - corner);
}

std::vector<double> powersOf (double ratio)
{
    std::vector<double> powers;
    for (int k = 1; k <= GateShape::chunkFrames; ++k)
        powers.push_back (std::pow (ratio, k));

    return powers;
}

double ratioOf (double tauSeconds, double sampleRateHz) noexcept
{
    return std::exp (-1.0 / (std::max (tauSeconds, KeyerSettings::shortestRcSeconds) * sampleRateHz));
}

} // namespace

GateShape::GateShape (const KeyerSettings& settings, double sampleRateHz)
    : kind_ (settings.shape),
      attackFrames_ (settings.attackSeconds * sampleRateHz),
      releaseFrames_ (settings.releaseSeconds * sampleRateHz),
      fewestFrames_ (KeyerSettings::shortestLinearSeconds * sampleRateHz),
      attackLeft_ (powersOf (ratioOf (settings.attackSeconds, sampleRateHz))),
      releaseLeft_ (powersOf (ratioOf (settings.releaseSeconds, sampleRateHz)))
{
    for (int i = 0; i <= curvePoints + 1; ++i)
        curve_.push_back (lineWithCorners (std::min (1.0, static_cast<double> (i) / curvePoints)));
}

double GateShape::travelled (double part) const noexcept
{
    const double place = std::clamp (part, 0.0, 1.0) * curvePoints;
    const auto index = static_cast<std::size_t> (place);
    return curve_[index] + (place - static_cast<double> (index)) * (curve_[index + 1] - curve_[index]);
}

} // namespace stopwright

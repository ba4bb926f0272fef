// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/RotaryMeans.h"

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

constexpr double fullTurn = 2.0 * std::numbers::pi;

} // namespace

RotaryMeans::Rotor::Rotor (double radiusMetres, const RotorPlace& place) noexcept
    : radiusMetres_ (radiusMetres),
      axisMetres_ (place.microphoneMetres)
{
    for (std::size_t index = 0; index < angleCount; ++index)
    {
        const double radians = fullTurn * static_cast<double> (index) / angleCount;
        sights_[index] = RotorSight::at (radians, radiusMetres, place);
        meanPower_ += sights_[index].gain * sights_[index].gain / angleCount;
    }
}

// The phase swings by w r / c either way. Where that is beyond what so many angles can follow, the mean has sunk to less
// than a sixth and counts as none.
Complex RotaryMeans::Rotor::mean (double frequencyHz) const noexcept
{
    constexpr double widestSwing = 25.0;
    const double radiansPerMetre = fullTurn * frequencyHz / RotorSight::soundMetresPerSecond;
    if (radiansPerMetre * radiusMetres_ > widestSwing)
        return 0.0;
    Complex sum = 0.0;
    for (const RotorSight& sight : sights_)
        sum += std::polar (sight.gain, -radiansPerMetre * (sight.metres - axisMetres_));
    return sum / static_cast<double> (angleCount);
}

RotaryMeans::RotaryMeans (const RotarySettings& settings) noexcept
    : crossoverHz_ (settings.crossoverHz),
      horn_ (settings.horn.radiusMetres, rotaryHornPlace),
      drum_ (settings.drum.radiusMetres, rotaryDrumPlace)
{}

RotaryMeans::Halves RotaryMeans::halves (double frequencyHz) const noexcept
{
    const Complex s { 0.0, frequencyHz / crossoverHz_ };
    const Complex once = 1.0 / (1.0 + std::numbers::sqrt2 * s + s * s);
    return { once * once, s * s * s * s * once * once };
}

Complex RotaryMeans::gain (double frequencyHz) const noexcept
{
    const auto [low, high] = halves (frequencyHz);
    return low * drum_.mean (frequencyHz) + high * horn_.mean (frequencyHz);
}

double RotaryMeans::power (double frequencyHz) const noexcept
{
    const auto [low, high] = halves (frequencyHz);
    const Complex together = low * std::conj (high) * drum_.mean (frequencyHz) * std::conj (horn_.mean (frequencyHz));
    return std::norm (low) * drum_.meanPower() + std::norm (high) * horn_.meanPower() + 2.0 * together.real();
}

} // namespace stopwright

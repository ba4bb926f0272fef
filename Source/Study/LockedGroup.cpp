// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/LockedGroup.h"

#include "Tone/FourierSeries.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

constexpr int pitchClasses = 12;

double hzOf (const SoundingWave& wave)
{
    return wave.tuning->frequencyHz (wave.generator);
}

bool isMultiple (double hz, double baseHz)
{
    constexpr double tolerance = 1e-6;
    const double times = hz / baseHz;
    return std::abs (times - std::round (times)) < tolerance * times;
}

/// Mutations that have odd factors below one another are whole multiples of a part of the lowest generator.
double baseOf (const std::vector<SoundingWave>& waves)
{
    constexpr int mostParts = 315; // 5 x 7 x 9
    double lowestHz = hzOf (waves.front());
    for (const SoundingWave& wave : waves)
        lowestHz = std::min (lowestHz, hzOf (wave));
    for (int parts = 1; parts <= mostParts; ++parts)
        if (std::ranges::all_of (waves,
                                 [&] (const SoundingWave& wave) { return isMultiple (hzOf (wave), lowestHz / parts); }))
            return lowestHz / parts;
    return lowestHz;
}

void addWave (const SoundingWave& wave, double baseHz, std::span<const Complex> response, std::vector<Complex>& bins)
{
    const auto step = static_cast<std::size_t> (std::lround (hzOf (wave) / baseHz));
    for (std::size_t bin = step, n = 1; bin < bins.size(); bin += step, ++n)
        bins[bin] += wave.volts * response[bin]
                     * fourierCoefficient (wave.wave, static_cast<int> (n), wave.generator, *wave.tuning);
}

} // namespace

std::size_t LockedGroup::gridSize() const noexcept
{
    constexpr double pointsAPeriod = 4096.0;
    constexpr std::size_t fewest = std::size_t { 1 } << 15;
    constexpr std::size_t most = std::size_t { 1 } << 18;
    const double wanted = std::min (pointsAPeriod * fastestHz / baseHz, static_cast<double> (most));
    return std::clamp (std::bit_ceil (static_cast<std::size_t> (wanted)), fewest, most);
}

std::vector<Complex> LockedGroup::spectrum() const
{
    std::vector<Complex> bins (gridSize() / 2);
    std::vector<Complex> response (bins.size());
    std::vector<bool> isDone (waves.size());
    for (std::size_t first = 0; first < waves.size(); ++first)
    {
        if (isDone[first])
            continue;
        waves[first].response->fill (baseHz, response);
        for (std::size_t wave = first; wave < waves.size(); ++wave)
            if (waves[wave].response == waves[first].response)
            {
                addWave (waves[wave], baseHz, response, bins);
                isDone[wave] = true;
            }
    }
    return bins;
}

std::vector<LockedGroup> lockedGroups (std::span<const SoundingWave> waves)
{
    std::array<LockedGroup, pitchClasses> byClass;
    for (const SoundingWave& wave : waves)
    {
        LockedGroup& group = byClass[static_cast<std::size_t> (wave.generator.chain % pitchClasses)];
        group.waves.push_back (wave);
        group.fastestHz = std::max (group.fastestHz, hzOf (wave));
    }
    std::vector<LockedGroup> groups;
    for (LockedGroup& group : byClass)
        if (! group.waves.empty())
        {
            group.baseHz = baseOf (group.waves);
            groups.push_back (std::move (group));
        }
    return groups;
}

double rmsOf (std::span<const Complex> spectrum) noexcept
{
    double power = 0.0;
    for (const Complex& partial : spectrum)
        power += 0.5 * std::norm (partial);
    return std::sqrt (power);
}

} // namespace stopwright

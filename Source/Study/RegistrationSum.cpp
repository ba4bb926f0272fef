// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/RegistrationSum.h"

#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr double samePitch = 1e-9;

/// What the phases change of the mean square.
double powerGain (const SharedPartial& partial) noexcept
{
    return partial.sumPeakVolts * partial.sumPeakVolts - partial.powerPeakVolts * partial.powerPeakVolts;
}

std::vector<SharedPartial> firstBy (std::vector<SharedPartial> partials, std::size_t count, double sign)
{
    constexpr double unheardDb = 0.1;
    std::erase_if (partials, [sign] (const SharedPartial& partial) { return ! (sign * partial.gainDb() > unheardDb); });
    std::ranges::stable_sort (partials, {},
                              [sign] (const SharedPartial& partial) { return -sign * powerGain (partial); });
    partials.resize (std::min (partials.size(), count));
    return partials;
}

/// One pitch: all of `partials` have it.
SharedPartial shared (std::span<const RailPartial> partials)
{
    SharedPartial sum { partials.front().harmonic, partials.front().frequencyHz, 0.0, 0.0, 0.0 };
    std::complex<double> volts = 0.0;
    double squares = 0.0;
    double size = 0.0;
    for (const RailPartial& partial : partials)
    {
        const double peak = std::abs (partial.volts);
        volts += partial.volts;
        squares += peak * peak;
        size += peak;
        sum.strongestPeakVolts = std::max (sum.strongestPeakVolts, peak);
    }
    constexpr double rounding = 1e-13;
    const double peak = std::abs (volts);
    sum.powerPeakVolts = std::sqrt (squares);
    sum.sumPeakVolts = peak <= rounding * size ? 0.0 : peak;
    return sum;
}

} // namespace

double SharedPartial::gainDb() const noexcept
{
    return powerPeakVolts > 0.0 ? toDecibels (sumPeakVolts / powerPeakVolts) : 0.0;
}

double RegistrationSum::powerDbv() const noexcept
{
    return toDecibels (powerVolts);
}

double RegistrationSum::gainDb() const noexcept
{
    return powerVolts > 0.0 ? toDecibels (sum.rmsVolts / powerVolts) : 0.0;
}

double RegistrationSum::reStrongestDb() const noexcept
{
    double strongest = 0.0;
    for (const ToneLevel& tone : tones)
        strongest = std::max (strongest, tone.rmsVolts);
    return strongest > 0.0 ? toDecibels (sum.rmsVolts / strongest) : 0.0;
}

RegistrationSum addRegistration (std::span<const std::vector<RailPartial>> tones)
{
    RegistrationSum result;
    double power = 0.0;
    std::vector<RailPartial> all;
    for (const auto& tone : tones)
    {
        result.tones.push_back (toneLevelOf (tone));
        power += std::pow (result.tones.back().rmsVolts, 2);
        std::ranges::copy_if (tone, std::back_inserter (all),
                              [] (const RailPartial& partial) { return std::abs (partial.volts) > 0.0; });
    }
    result.powerVolts = std::sqrt (power);
    std::ranges::stable_sort (all, {}, &RailPartial::frequencyHz);

    std::vector<RailPartial> summed;
    for (std::span<const RailPartial> left (all); ! left.empty();)
    {
        const double limitHz = left.front().frequencyHz * (1.0 + samePitch);
        const auto end = std::ranges::find_if (left, [limitHz] (const RailPartial& partial)
                                               { return partial.frequencyHz > limitHz; });
        const auto together = left.first (static_cast<std::size_t> (end - left.begin()));
        const SharedPartial pitch = shared (together);
        if (together.size() > 1)
            result.partials.push_back (pitch);
        summed.push_back ({ pitch.harmonic, pitch.frequencyHz, {}, pitch.sumPeakVolts });
        left = left.subspan (together.size());
    }
    result.sum = toneLevelOf (summed);
    return result;
}

std::vector<SharedPartial> mostCancelled (const RegistrationSum& sum, std::size_t count)
{
    return firstBy (sum.partials, count, -1.0);
}

std::vector<SharedPartial> mostReinforced (const RegistrationSum& sum, std::size_t count)
{
    return firstBy (sum.partials, count, 1.0);
}

std::vector<std::vector<RailPartial>>
    registrationTones (const RailStudy& study, std::span<const std::size_t> stops, std::span<const int> keys)
{
    const RailState state = study.withDrawn ({ stops.begin(), stops.end() });
    std::vector<std::vector<RailPartial>> tones;
    for (const std::size_t stop : stops)
        for (const int key : keys)
            if (key >= study.keySource (stop).lowestKey && key <= study.keySource (stop).highestKey)
                tones.push_back (study.partials (stop, key, state));
    return tones;
}

} // namespace stopwright

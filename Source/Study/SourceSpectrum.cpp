// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/SourceSpectrum.h"

#include "Study/FootagePitch.h"
#include "Study/TapPartials.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

/// Both sources where at least one has a partial.
struct Meeting
{
    double harmonic = 0.0;
    Complex present;
    Complex added;

    double squareAt (double ratio) const { return std::norm (present + ratio * added); }
};

std::vector<Meeting> meetingsOf (const SourceSpectrum& present, const SourceSpectrum& added)
{
    std::vector<Meeting> meetings;
    for (const auto& partial : present.partials())
        meetings.push_back ({ partial.harmonic, partial.volts, added.at (partial.harmonic) });
    for (const auto& partial : added.partials())
        if (present.at (partial.harmonic) == 0.0)
            meetings.push_back ({ partial.harmonic, 0.0, partial.volts });
    return meetings;
}

bool isSilent (const Meeting& meeting)
{
    return meeting.present == 0.0 && meeting.added == 0.0;
}

} // namespace

SourceSpectrum::SourceSpectrum (const std::vector<Tap>& taps, const KeySource& keySource, int key)
{
    constexpr double rounding = 1e-13;
    Card card;
    card.taps = taps;
    const auto all = tapPartials (card, keySource, key);
    for (std::span<const TapPartial> left (all); ! left.empty();)
    {
        const auto count = samePitchCount (left);
        Complex sum;
        double size = 0.0;
        for (const auto& partial : left.first (count))
        {
            sum += partial.volts;
            size += std::abs (partial.volts);
        }
        partials_.push_back ({ left.front().harmonic, std::abs (sum) <= rounding * size ? 0.0 : sum });
        strongestVolts_ = std::max (strongestVolts_, std::abs (partials_.back().volts));
        left = left.subspan (count);
    }
    // What is left of a null in a sine or a difference is rounding as well.
    for (auto& partial : partials_)
        if (std::abs (partial.volts) <= rounding * strongestVolts_)
            partial.volts = 0.0;
}

std::complex<double> SourceSpectrum::at (double harmonic) const noexcept
{
    const auto found =
        std::ranges::lower_bound (partials_, harmonic * (1.0 - samePitchTolerance), {}, &Partial::harmonic);
    if (found == partials_.end() || found->harmonic > harmonic * (1.0 + samePitchTolerance))
        return 0.0;
    return found->volts;
}

double SourceSpectrum::levelDb (double harmonic) const noexcept
{
    return toDecibels (strongestVolts_ > 0.0 ? std::abs (at (harmonic)) / strongestVolts_ : 0.0);
}

std::optional<double>
    mixingRatio (const SourceSpectrum& present, const SourceSpectrum& added, double harmonic, double wantedDb)
{
    constexpr double least = 1e-4;
    constexpr double most = 1e4;
    constexpr double step = 1.122018454301963; // 10^(1/20)
    constexpr int halvings = 60;
    // The strongest itself may be what is wanted: equal must count as reached.
    constexpr double rounding = 1e-12;

    auto meetings = meetingsOf (present, added);
    std::erase_if (meetings, isSilent);
    const Meeting wanted { harmonic, present.at (harmonic), added.at (harmonic) };
    const double share = std::pow (fromDecibels (wantedDb) * (1.0 - rounding), 2.0);
    const auto reached = [&] (double ratio)
    {
        double strongest = 0.0;
        for (const auto& meeting : meetings)
            strongest = std::max (strongest, meeting.squareAt (ratio));
        return wanted.squareAt (ratio) >= share * strongest && strongest > 0.0;
    };

    double below = 0.0;
    for (double above = least; above <= most * step; below = above, above *= step)
    {
        if (! reached (above))
            continue;
        for (int i = 0; i < halvings; ++i)
        {
            const double middle = 0.5 * (below + above);
            (reached (middle) ? above : below) = middle;
        }
        return above;
    }
    return {};
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/TapPartials.h"

#include "Study/FootagePitch.h"
#include "Tone/FourierSeries.h"
#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace stopwright
{

namespace
{

/// How many partials lie at or below highestHz, one that falls on it included.
int partialCount (double fundamentalHz, double highestHz)
{
    return static_cast<int> (std::floor (highestHz / fundamentalHz * (1.0 + samePitchTolerance)));
}

void addPartials (const Tap& tap,
                  std::size_t tapIndex,
                  const Tuning& tuning,
                  int key,
                  double highestHz,
                  std::vector<TapPartial>& partials)
{
    const auto generator = tuning.generatorFor (key, tap.footage);
    if (! generator)
        return;

    const double fundamentalHz = tuning.frequencyHz (*generator);
    const double ratio = pitchRatio (fundamentalHz, tuning.keyHz (key), tap.footage);
    const double volts = tap.polarity * tap.voltsPeakToPeak;
    const int count = partialCount (fundamentalHz, highestHz);
    for (int n = 1; n <= count; ++n)
        partials.push_back (
            { n * ratio, n * fundamentalHz, tapIndex, volts * fourierCoefficient (tap.wave, n, *generator, tuning) });
}

void requireRange (int key, double highestHz)
{
    constexpr int highestKey = 127;
    constexpr double mostHz = 1e6;
    if (key < 0 || key > highestKey)
        throw Error ("There is no key number " + std::to_string (key) + ": keys are counted from 0 (C-1) to 127 (G9).");
    if (! (highestHz > 0.0 && highestHz <= mostHz))
        throw Error ("Partials can be listed up to a frequency above 0 and at most 1 MHz.");
}

} // namespace

std::vector<TapPartial> tapPartials (const Card& card, const KeySource& keySource, int key, double highestHz)
{
    requireRange (key, highestHz);
    std::vector<TapPartial> partials;
    for (std::size_t tap = 0; tap < card.taps.size(); ++tap)
        addPartials (card.taps[tap], tap, keySource.tuning, key, highestHz, partials);
    std::ranges::stable_sort (partials, {}, &TapPartial::frequencyHz);
    return partials;
}

std::size_t samePitchCount (std::span<const TapPartial> partials) noexcept
{
    const double limitHz = partials.front().frequencyHz * (1.0 + samePitchTolerance);
    return static_cast<std::size_t> (
        std::ranges::find_if (partials, [limitHz] (const TapPartial& partial) { return partial.frequencyHz > limitHz; })
        - partials.begin());
}

} // namespace stopwright

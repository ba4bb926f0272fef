// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/TapPartials.h"

#include <complex>
#include <span>
#include <vector>

namespace stopwright
{

/// One partial of one key of one stop. Peak amplitudes with their phases: all generators rise at time zero.
struct RailPartial
{
    double harmonic = 0.0; ///< counted from the key's 8 ft pitch
    double frequencyHz = 0.0;
    std::complex<double> source; ///< volts of the taps together, unloaded, polarity of taps and stop in it
    std::complex<double> volts;  ///< at the place asked for
};

/// Partials of a key as the taps' gains let them through, one row for each pitch. gainsOf (frequencyHz) gives a complex
/// gain for each tap; `polarity` turns all of them. Threading: [control].
template <typename GainsOf>
std::vector<RailPartial> throughGains (std::span<const TapPartial> ofTaps, double polarity, GainsOf&& gainsOf)
{
    std::vector<RailPartial> partials;
    while (! ofTaps.empty())
    {
        const auto count = samePitchCount (ofTaps);
        RailPartial partial { ofTaps.front().harmonic, ofTaps.front().frequencyHz, 0.0, 0.0 };
        const auto& gains = gainsOf (partial.frequencyHz);
        for (const TapPartial& tap : ofTaps.first (count))
        {
            partial.source += polarity * tap.volts;
            partial.volts += polarity * tap.volts * gains[tap.tap];
        }
        partials.push_back (partial);
        ofTaps = ofTaps.subspan (count);
    }
    return partials;
}

} // namespace stopwright

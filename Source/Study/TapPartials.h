// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Organ/KeySource.h"

#include <complex>
#include <cstddef>
#include <span>
#include <vector>

namespace stopwright
{

/// One partial of one tap of a card for one key.
struct TapPartial
{
    double harmonic = 0.0;      ///< counted from the key's 8 ft pitch
    double frequencyHz = 0.0;   ///<
    std::size_t tap = 0;        ///< index among the card's taps
    std::complex<double> volts; ///< open-circuit peak amplitude: sign and phase re the generator's rising edge
};

/// Every partial of every tap up to highestHz, in ascending frequency, from the Fourier series; partials a wave lacks
/// stand there with zero. Partials of the same pitch are equal to within 1e-9 and lie together.
/// Threading: [control]. Fails: Error on a key outside 0 .. 127 or highestHz outside 0 .. 1 MHz.
std::vector<TapPartial> tapPartials (const Card& card, const KeySource& keySource, int key, double highestHz = 20000.0);

/// How many at the front of `partials`, which is not empty, are of the same pitch. Threading: [control].
std::size_t samePitchCount (std::span<const TapPartial> partials) noexcept;

} // namespace stopwright

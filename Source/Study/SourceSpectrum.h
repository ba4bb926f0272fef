// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Organ/KeySource.h"

#include <complex>
#include <optional>
#include <span>
#include <vector>

namespace stopwright
{

/// The waves of some taps on one key, added as complex amplitudes where their pitches meet, before any network: open
/// circuit, peak volts. Threading: [control].
class SourceSpectrum
{
public:
    struct Partial
    {
        double harmonic = 0.0; ///< counted from the key's 8 ft pitch
        std::complex<double> volts;
    };

    /// Up to 20 kHz. Fails: Error as tapPartials.
    SourceSpectrum (const std::vector<Tap>& taps, const KeySource& keySource, int key);

    std::span<const Partial> partials() const noexcept { return partials_; }

    /// Zero where there is none.
    std::complex<double> at (double harmonic) const noexcept;

    double strongestVolts() const noexcept { return strongestVolts_; }

    /// dB re the strongest; -infinity for an absent one.
    double levelDb (double harmonic) const noexcept;

private:
    std::vector<Partial> partials_;
    double strongestVolts_ = 0.0;
};

/// The gain x >= 0 of a second source `added` that brings a harmonic of present + x added to `wantedDb` re the strongest
/// partial of that sum: the smallest there is, from -80 to 80 dB. Nothing when none does. Threading: [control].
/// Source: the definition; sign change on a grid of 1/20 decade, then bisection.
std::optional<double>
    mixingRatio (const SourceSpectrum& present, const SourceSpectrum& added, double harmonic, double wantedDb);

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/ResponseCurve.h"
#include "Tone/Tuning.h"
#include "Tone/Wave.h"

#include <complex>
#include <cstddef>
#include <span>
#include <vector>

namespace stopwright
{

/// One tap of one sounding key, on its way to the place that is looked at. tuning and response must stay.
struct SoundingWave
{
    Wave wave;
    Generator generator;
    const Tuning* tuning = nullptr;
    double volts = 0.0; ///< peak to peak of the unit wave, polarity in it
    const ResponseCurve* response = nullptr;
};

/// Waves of one pitch class: their generators hang on one divider chain, so that together they are one periodic wave. An
/// exact mutation belongs to the chain it is an exact multiple of.
struct LockedGroup
{
    double baseHz = 0.0;    ///< the largest frequency all generators are whole multiples of
    double fastestHz = 0.0; ///< of the generators; the upper ranks of a staircase not counted
    std::vector<SoundingWave> waves;

    /// Points of one period: a power of two, 4096 for each period of the fastest generator as far as 2^15 .. 2^18 allow.
    std::size_t gridSize() const noexcept;

    /// Complex amplitudes of k baseHz at the place looked at, k = 0 .. gridSize / 2 - 1: the wave is the sum of
    /// |c| sin (2 pi k baseHz t + arg c), t = 0 where the generators' squares rise. Threading: [control].
    std::vector<std::complex<double>> spectrum() const;
};

/// Sorts waves by pitch class. Threading: [control].
std::vector<LockedGroup> lockedGroups (std::span<const SoundingWave> waves);

/// Volts rms of a spectrum. Threading: [control].
double rmsOf (std::span<const std::complex<double>> spectrum) noexcept;

} // namespace stopwright

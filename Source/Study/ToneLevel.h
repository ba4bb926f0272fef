// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/RailStudy.h"

#include <span>

namespace stopwright
{

/// How loud a tone is by two measures, and where its weight lies. Volts rms. A tone without partials is all zero.
struct ToneLevel
{
    double rmsVolts = 0.0;
    double aWeightedVolts = 0.0;    ///< rms behind frequency weighting A (see aWeighting)
    double strongestHarmonic = 0.0; ///< counted from the key's 8 ft pitch
    double strongestHz = 0.0;
    double strongestPeakVolts = 0.0;
    double centroidHz = 0.0; ///< mean of the partials' frequencies weighted by their amplitudes

    double dbv() const noexcept; ///< dB re 1 V rms, -infinity for silence
    double dbva() const noexcept;
};

/// Threading: [any].
ToneLevel toneLevelOf (std::span<const RailPartial> partials) noexcept;

/// Tones that sound together: partials of the same pitch (to within 1e-9) added as complex amplitudes, in ascending
/// frequency. Harmonics count as in the first tone that has the pitch. Threading: [control].
std::vector<RailPartial> addTones (std::span<const std::vector<RailPartial>> tones);

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/KeySource.h"

#include <span>
#include <vector>

namespace stopwright
{

/// One partial of a key: its order counted from the key's 8 ft pitch (a 16 ft tap begins at 0.5), where it lies, the
/// taps' open-circuit voltages added as complex amplitudes, and what comes out of the card. Peak volts;
/// outputDb re the strongest partial (-infinity for an absent one).
struct HarmonicRow
{
    double harmonic = 0.0;
    double frequencyHz = 0.0;
    double sourcePeakVolts = 0.0;
    double outputPeakVolts = 0.0;
    double outputDb = 0.0;
};

/// Every partial of every tap for one key up to highestHz, in ascending frequency, from the Fourier series and the
/// analogue small-signal response. Partials a wave lacks are listed with zero. With diodes or transistors on the card it
/// is the answer to small signals about the operating point: what they add by distortion is not in it.
/// Threading: [control]. Fails: Error when the card's network is not sound.
std::vector<HarmonicRow>
    harmonicTable (const Card& card, const KeySource& keySource, int key, double highestHz = 20000.0);

/// Volts rms of all the partials together, at the card's output. Threading: [control].
double rmsVolts (std::span<const HarmonicRow> rows) noexcept;

} // namespace stopwright

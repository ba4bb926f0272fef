// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/BenchPoint.h"

namespace stopwright
{

/// All unplayed keys together at a place against one played key there, dB. -infinity where nothing gets in, for taps
/// without a source resistance.
struct BleedLevels
{
    double levelDb = 0.0;        ///< volts rms of all partials to 20 kHz
    double aWeightedDb = 0.0;    ///< the same behind frequency weighting A
    double fundamentalsDb = 0.0; ///< the idle keys' lowest partials as powers, against that of the played key
};

/// Bleed through stray capacitance: every unplayed key's wave reaches the tap's node through strayFarads of its own, that
/// is as j w C Rs / (1 + j w C Rs) of what the played key gives, Rs being the tap's source resistance; then it goes
/// through the network like everything else. Octaves are phase-locked and add as amplitudes. The keyers' own bleed is not
/// in it. Units/range: strayFarads >= 0; 2 pF is common practice, no source. Threading: [control].
BleedLevels bleedLevels (const BenchPoint& point, int playedKey, double strayFarads = 2e-12);

} // namespace stopwright

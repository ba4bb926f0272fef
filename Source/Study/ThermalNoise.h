// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/BenchPoint.h"

#include <complex>
#include <functional>

namespace stopwright
{

/// Where and how warm noise is measured. Range: 0 < fromHz < toHz; kelvin >= 0.
struct NoiseBand
{
    double fromHz = 20.0;
    double toHz = 20000.0;
    double kelvin = 298.15;
};

/// The square root of a spectral density integrated over the band: volts rms from volts squared per hertz. Three points of
/// Gauss and Legendre in every 128th of an octave: good to 2e-6 for resonances of Q 50. Threading: [control].
double integratedNoise (const std::function<double (double frequencyHz)>& density, const NoiseBand& band);

/// Thermal noise of an impedance of passive parts, 4 k T Re Z, in volts rms. Threading: [control].
/// Source: Johnson, Physical Review 32 (1928) 97; Nyquist, Physical Review 32 (1928) 110, eq. 8.
double thermalNoise (const std::function<std::complex<double> (double frequencyHz)>& ohms, const NoiseBand& band);

/// A mixing bus's own noise at what is heard of it, every stop standing as in `state`.
struct BusNoise
{
    double volts = 0.0;     ///< rms over the band
    double noiseGain = 1.0; ///< of a virtual earth at 1 kHz: what its amplifier's own noise is multiplied by
};

/// Passive: thermal noise of everything on it. Virtual earth: the amplifier's noise volts times |1 + Rf Y|, the thermal
/// noise of Rf, and of the sources' Y, 4 k T Re Y |Zf|^2; silent stops count as sounding ones do. `amplifierVolts` is per
/// root hertz at the input; its current noise and its loss of gain are left out. `onward` weighs the density by the
/// squared magnitude of a gain behind the bus. Threading: [control].
/// Source: Nyquist as above; noise gain 1 + Rf Y: closed form of the inverting adder.
BusNoise busNoise (const RailStudy& rail,
                   std::size_t bus,
                   const RailState& state,
                   const NoiseBand& band,
                   double amplifierVolts,
                   const std::function<std::complex<double> (double frequencyHz)>& onward = {});

} // namespace stopwright

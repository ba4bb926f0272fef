// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>
#include <span>
#include <vector>

namespace stopwright
{

/// The discrete spectrum of real samples, bins 0 .. n/2, scaled to peak amplitudes: A cos (2 pi k i / n + phase) gives
/// A exp (j phase) in bin k. Exact when everything in the samples repeats over their length; any length is taken.
std::vector<std::complex<double>> spectrum (std::span<const double> samples);

/// Magnitudes of spectrum().
std::vector<double> amplitudes (std::span<const double> samples);

/// One bin of spectrum(), for a number of whole cycles over the length: what a tuned voltmeter would show. The sum runs
/// over exact angles (the index is reduced in integers), so that it is good to about 1e-14 of the strongest component.
std::complex<double> bin (std::span<const double> samples, long long cycles);

/// Complex peak amplitude of the component at a frequency that fits no whole number of cycles: one bin of the transform
/// under a four-term window (side lobes below -92 dB). Other components have to be at least 4 / length away.
///
/// The phase is that of the first sample. Source: F. J. Harris, Proc. IEEE 66 (1978) 51, table I (4-sample
/// Blackman-Harris, -92 dB)
std::complex<double> windowedPartial (std::span<const double> samples, double frequencyHz, double sampleRateHz);

} // namespace stopwright

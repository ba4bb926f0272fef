// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>
#include <cstdint>
#include <vector>

namespace stopwright
{

/// One period of a wave as a table made from its Fourier series up to a highest harmonic, read at any phase by cubic
/// (four-point Lagrange) interpolation.
///
/// A rounded wave is rendered from this and not from residuals: an exponential piece has corners in every derivative,
/// and with a time constant of less than a few samples their sum no longer converges, while a series cut off below the
/// first harmonic that could fold has no alias at any time constant. The table has at least 16 points per period of its
/// highest harmonic and 8192 in all: interpolation images stay 130 dB under a fundamental for spectra that fall like a
/// square's. Phases are 64-bit fractions of a period, 2^64 being one period.
/// Threading: construct on [control]; immutable, read on [any].
class CycleTable
{
public:
    /// coefficients[n - 1] is harmonic n, as fourierCoefficient gives it. Its size is the highest harmonic, at least 1.
    explicit CycleTable (const std::vector<std::complex<double>>& coefficients);

    /// Writes `count` samples, the first at `phase`, each next one `increment` later.
    /// Threading: [audio] no allocation, no lock.
    void read (std::uint64_t phase, std::uint64_t increment, int count, float* out) const noexcept;

private:
    int bits_ = 0;
    std::vector<float> points_; ///< one before the start, 2^bits_, two behind the end
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>
#include <cstddef>
#include <span>
#include <vector>

namespace stopwright
{

/// Discrete Fourier transform of one length, a power of two, in place.
/// Threading: construct on [control]; the const functions may be called by several threads.
/// Source: Cooley and Tukey, "An algorithm for the machine calculation of complex Fourier series", 1965.
class FourierTransform
{
public:
    /// Range: size a power of two, 2 .. 2^24. Fails: Error on another one.
    explicit FourierTransform (std::size_t size);

    std::size_t size() const noexcept { return order_.size(); }

    /// values[n] = sum over k of values[k] e^(-2 pi i k n / size). values.size() is the size.
    void forward (std::span<std::complex<double>> values) const noexcept;

    /// The same with the other sign of the exponent; not divided by the size.
    void backward (std::span<std::complex<double>> values) const noexcept;

private:
    void transform (std::span<std::complex<double>> values, double sign) const noexcept;

    std::vector<std::size_t> order_;
    std::vector<std::complex<double>> turns_; ///< [half + k] e^(-pi i k / half), k below half = 1, 2, 4 ..
};

} // namespace stopwright

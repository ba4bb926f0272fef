// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/WaveMaker.h"

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

/// Two-sided coefficients Y_k = c_k / 2i, weighed.
std::vector<Complex> weighed (std::span<const Complex> spectrum)
{
    constexpr double taper = 12.0;
    std::vector<Complex> values (spectrum.size());
    for (std::size_t k = 1; k < spectrum.size(); ++k)
    {
        const double place = static_cast<double> (k) / static_cast<double> (spectrum.size());
        values[k] = std::exp (-taper * place * place) * Complex (0.0, -0.5) * spectrum[k];
    }
    return values;
}

} // namespace

// Even points as real parts and odd ones as imaginary parts come from one transform of half the length:
// Z_k = (Y_k + Y_k+h) + i (Y_k - Y_k+h) e^(i pi k / h), where Y_k+h = conj (Y_h-k).
std::vector<double> WaveMaker::waveOf (std::span<const Complex> spectrum)
{
    const std::size_t half = spectrum.size();
    const auto& transform = transforms_.try_emplace (half, half).first->second;
    const auto partials = weighed (spectrum);
    std::vector<Complex> values (half);
    for (std::size_t k = 1; k < half; ++k)
    {
        const Complex mirror = std::conj (partials[half - k]);
        const double angle = std::numbers::pi * static_cast<double> (k) / static_cast<double> (half);
        const Complex odd = (partials[k] - mirror) * Complex (-std::sin (angle), std::cos (angle));
        values[k] = partials[k] + mirror + odd;
    }
    transform.backward (values);
    std::vector<double> wave;
    wave.reserve (2 * half);
    for (const Complex& value : values)
    {
        wave.push_back (value.real());
        wave.push_back (value.imag());
    }
    return wave;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/FourierTransform.h"

#include "Units/Error.h"

#include <bit>
#include <numbers>
#include <string>
#include <utility>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

} // namespace

FourierTransform::FourierTransform (std::size_t size)
{
    constexpr std::size_t largest = std::size_t { 1 } << 24;
    if (size < 2 || size > largest || ! std::has_single_bit (size))
        throw Error ("A transform of " + std::to_string (size) + " points cannot be made: take a power of two.");
    order_.resize (size);
    for (std::size_t index = 1; index < size; ++index)
        order_[index] = order_[index / 2] / 2 + (index % 2 == 1 ? size / 2 : 0);
    turns_.resize (size);
    for (std::size_t half = 1; half < size; half *= 2)
        for (std::size_t k = 0; k < half; ++k)
            turns_[half + k] =
                std::polar (1.0, -std::numbers::pi * static_cast<double> (k) / static_cast<double> (half));
}

void FourierTransform::forward (std::span<Complex> values) const noexcept
{
    transform (values, 1.0);
}

void FourierTransform::backward (std::span<Complex> values) const noexcept
{
    transform (values, -1.0);
}

void FourierTransform::transform (std::span<Complex> values, double sign) const noexcept
{
    for (std::size_t index = 0; index < order_.size(); ++index)
        if (index < order_[index])
            std::swap (values[index], values[order_[index]]);
    for (std::size_t half = 1; half < order_.size(); half *= 2)
        for (std::size_t start = 0; start < order_.size(); start += 2 * half)
            for (std::size_t k = 0; k < half; ++k)
            {
                const Complex turn = turns_[half + k];
                const double re = turn.real();
                const double im = sign * turn.imag();
                const Complex other = values[start + half + k]; // by hand: the library's product looks for infinities
                const Complex turned { re * other.real() - im * other.imag(), re * other.imag() + im * other.real() };
                values[start + half + k] = values[start + k] - turned;
                values[start + k] += turned;
            }
}

} // namespace stopwright

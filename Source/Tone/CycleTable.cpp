// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/CycleTable.h"

#include "Units/WideVector.h"

#include <cmath>
#include <numbers>
#include <utility>

namespace stopwright
{

namespace
{

constexpr int fewestBits = 13;
constexpr std::size_t pointsPerHarmonic = 16;

void permuteByReversedBits (std::vector<std::complex<double>>& values)
{
    for (std::size_t i = 1, j = 0; i < values.size(); ++i)
    {
        std::size_t bit = values.size() / 2;
        for (; (j & bit) != 0; bit /= 2)
            j ^= bit;
        j ^= bit;
        if (i < j)
            std::swap (values[i], values[j]);
    }
}

/// In place: values[i] = sum over n of values[n] exp (2 pi i n i / size). Source: Cooley & Tukey 1965, radix 2.
void inverseTransform (std::vector<std::complex<double>>& values)
{
    const std::size_t size = values.size();
    std::vector<std::complex<double>> turns (size / 2);
    for (std::size_t i = 0; i < turns.size(); ++i)
        turns[i] = std::polar (1.0, 2.0 * std::numbers::pi * static_cast<double> (i) / static_cast<double> (size));

    permuteByReversedBits (values);
    for (std::size_t half = 1; half < size; half *= 2)
        for (std::size_t first = 0; first < size; first += 2 * half)
            for (std::size_t i = 0; i < half; ++i)
            {
                const std::complex<double> a = values[first + i];
                const std::complex<double> w = turns[i * (size / (2 * half))];
                const std::complex<double> c = values[first + half + i];
                const std::complex<double> b (w.real() * c.real() - w.imag() * c.imag(),
                                              w.real() * c.imag() + w.imag() * c.real());
                values[first + i] = a + b;
                values[first + half + i] = a - b;
            }
}

STOPWRIGHT_WIDE
void readCubic (const float* points,
                int bits,
                std::uint64_t phase,
                std::uint64_t increment,
                int count,
                float* out) noexcept
{
    const int shift = 64 - bits;

    for (int i = 0; i < count; ++i)
    {
        const float* p = points + (phase >> shift);
        const float t = static_cast<float> (static_cast<std::int32_t> ((phase << bits) >> 40)) * 0x1p-24F;
        const float even = 0.5F * (p[0] + p[2]) - p[1];
        const float cubic = (1.0F / 6.0F) * (p[3] - p[0]) + 0.5F * (p[1] - p[2]);
        const float slope = p[2] - (1.0F / 3.0F) * p[0] - 0.5F * p[1] - (1.0F / 6.0F) * p[3];
        out[i] = p[1] + t * (slope + t * (even + t * cubic));
        phase += increment;
    }
}

} // namespace

CycleTable::CycleTable (const std::vector<std::complex<double>>& coefficients)
{
    bits_ = fewestBits;
    while ((std::size_t { 1 } << bits_) < pointsPerHarmonic * coefficients.size())
        ++bits_;

    const std::size_t size = std::size_t { 1 } << bits_;
    std::vector<std::complex<double>> values (size);
    for (std::size_t n = 1; n <= coefficients.size(); ++n)
        values[n] = coefficients[n - 1];

    inverseTransform (values);

    points_.reserve (size + 3);
    for (std::size_t i = 0; i < size + 3; ++i)
        points_.push_back (static_cast<float> (values[(i + size - 1) % size].imag()));
}

void CycleTable::read (std::uint64_t phase, std::uint64_t increment, int count, float* out) const noexcept
{
    readCubic (points_.data(), bits_, phase, increment, count, out);
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Support/Spectrum.h"

#include <fftw3.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <memory>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double twoPi = 2.0 * std::numbers::pi;

struct PlanDeleter
{
    void operator() (fftw_plan plan) const { fftw_destroy_plan (plan); }
};

using Plan = std::unique_ptr<std::remove_pointer_t<fftw_plan>, PlanDeleter>;

/// Bin 0 and, for an even length, the last one stand for themselves; every other shares its amplitude with a mirror.
double binScale (std::size_t index, std::size_t length)
{
    const auto isAlone = index == 0 || 2 * index == length;
    return (isAlone ? 1.0 : 2.0) / static_cast<double> (length);
}

double blackmanHarris (double position)
{
    const auto angle = twoPi * position;
    return 0.35875 - 0.48829 * std::cos (angle) + 0.14128 * std::cos (2.0 * angle) - 0.01168 * std::cos (3.0 * angle);
}

} // namespace

std::vector<std::complex<double>> spectrum (std::span<const double> samples)
{
    const auto length = samples.size();
    if (length == 0)
        return {};

    std::vector<double> input (samples.begin(), samples.end());
    std::vector<std::complex<double>> bins (length / 2 + 1);

    // FFTW takes std::complex<double> for its own type: the layouts are the same by both definitions.
    auto* output = reinterpret_cast<fftw_complex*> (bins.data());
    const Plan plan (fftw_plan_dft_r2c_1d (static_cast<int> (length), input.data(), output, FFTW_ESTIMATE));
    fftw_execute (plan.get());

    for (std::size_t index = 0; index < bins.size(); ++index)
        bins[index] *= binScale (index, length);

    return bins;
}

std::vector<double> amplitudes (std::span<const double> samples)
{
    const auto bins = spectrum (samples);
    std::vector<double> magnitudes (bins.size());
    std::ranges::transform (bins, magnitudes.begin(), [] (auto value) { return std::abs (value); });
    return magnitudes;
}

std::complex<double> bin (std::span<const double> samples, long long cycles)
{
    const auto length = static_cast<long long> (samples.size());
    std::complex<double> sum;
    long long turn = 0; // cycles * index modulo length
    for (const double sample : samples)
    {
        sum += sample * std::polar (1.0, -twoPi * static_cast<double> (turn) / static_cast<double> (length));
        turn = (turn + cycles) % length;
    }

    return sum * binScale (static_cast<std::size_t> (cycles), samples.size());
}

std::complex<double> windowedPartial (std::span<const double> samples, double frequencyHz, double sampleRateHz)
{
    const auto length = static_cast<double> (samples.size());
    std::complex<double> sum;
    double weights = 0.0;
    double index = 0.0;
    for (const double sample : samples)
    {
        const auto weight = blackmanHarris (index / length);
        const auto cycles = std::fmod (index * (frequencyHz / sampleRateHz), 1.0);
        sum += weight * sample * std::complex (std::cos (twoPi * cycles), -std::sin (twoPi * cycles));
        weights += weight;
        index += 1.0;
    }

    return 2.0 * sum / weights;
}

} // namespace stopwright

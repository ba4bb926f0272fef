// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/TestTones.h"

#include "Support/Spectrum.h"
#include "Units/Decibels.h"

#include <cmath>
#include <numbers>

namespace stopwright::test
{

std::vector<double> sine (std::size_t length, long long cycles, long long period, double amplitude, double phase)
{
    std::vector<double> samples (length);
    for (std::size_t i = 0; i < length; ++i)
    {
        const auto place = static_cast<double> (cycles * static_cast<long long> (i) % period);
        samples[i] = amplitude * std::sin (2.0 * std::numbers::pi * place / static_cast<double> (period) + phase);
    }
    return samples;
}

double worstAliasDb (std::span<const double> samples, std::size_t cycles, double rateHz)
{
    const auto levels = amplitudes (samples);
    const double binHz = rateHz / static_cast<double> (samples.size());
    double worst = 0.0;
    for (std::size_t bin = 1; bin < levels.size(); ++bin)
    {
        const double hz = static_cast<double> (bin) * binHz;
        if (bin % cycles != 0 && hz >= 20.0 && hz <= 20000.0)
            worst = std::max (worst, levels[bin]);
    }
    return toDecibels (worst / levels[cycles]);
}

std::vector<double> noise (std::size_t length, double peak, Random& random)
{
    std::vector<double> samples (length);
    for (double& sample : samples)
        sample = random.uniform (-peak, peak);
    return samples;
}

} // namespace stopwright::test

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/StepKernel.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double pi = std::numbers::pi;
constexpr double audibleHz = 20000.0;
constexpr double stopBandDb = 141.0;
constexpr double highestBeta = 14.7; // more would only widen the slope, the stop band is far below single precision

/// Modified Bessel function of order zero. Source: Abramowitz & Stegun 9.6.12
double besselI0 (double x) noexcept
{
    const double quarter = 0.25 * x * x;
    double term = 1.0;
    double sum = 1.0;
    for (int k = 1; term > 1.0e-18 * sum; ++k)
    {
        term *= quarter / (static_cast<double> (k) * k);
        sum += term;
    }
    return sum;
}

/// Source: Kaiser 1974, (A - 8) = 2.285 T dw.
int tapsFor (double sampleRateHz) noexcept
{
    const double slope = 2.0 * pi * std::max (0.02, (sampleRateHz - 2.0 * audibleHz) / sampleRateHz);
    const double taps = (stopBandDb - 8.0) / (2.285 * slope);
    return std::clamp (8 * static_cast<int> (std::ceil (taps / 8.0)), 16, StepKernel::mostTaps);
}

double betaFor (int taps, double sampleRateHz) noexcept
{
    const double slope = 2.0 * pi * std::max (0.02, (sampleRateHz - 2.0 * audibleHz) / sampleRateHz);
    return std::min (highestBeta, 0.1102 * (8.0 + 2.285 * taps * slope - 8.7));
}

struct Integrals
{
    std::vector<double> step; ///< at -T/2 + i / phases
    std::vector<double> ramp;
};

/// Integrates h and t h cell by cell with four Gauss points (error far below double rounding on so short a cell).
Integrals integrate (int taps, double beta)
{
    constexpr std::array<double, 4> points { -0.8611363115940526, -0.3399810435848563, 0.3399810435848563,
                                             0.8611363115940526 };
    constexpr std::array<double, 4> weights { 0.3478548451374538, 0.6521451548625461, 0.6521451548625461,
                                              0.3478548451374538 };
    const double half = 0.5 * taps;
    const double cell = 1.0 / StepKernel::phases;
    const auto count = static_cast<std::size_t> (taps) * StepKernel::phases;

    std::vector<double> area { 0.0 };
    std::vector<double> moment { 0.0 };
    for (std::size_t i = 0; i < count; ++i)
    {
        const double middle = (static_cast<double> (i) + 0.5) * cell - half;
        double areaOfCell = 0.0;
        double momentOfCell = 0.0;
        for (std::size_t p = 0; p < points.size(); ++p)
        {
            const double t = middle + 0.5 * cell * points[p];
            const double window = besselI0 (beta * std::sqrt (std::max (0.0, 1.0 - t * t / (half * half))));
            const double h = 0.5 * cell * weights[p] * window * std::sin (pi * t) / (pi * t);
            areaOfCell += h;
            momentOfCell += h * t;
        }
        area.push_back (area.back() + areaOfCell);
        moment.push_back (moment.back() + momentOfCell);
    }

    Integrals integrals;
    for (std::size_t i = 0; i <= count; ++i)
    {
        const double t = static_cast<double> (i) * cell - half;
        integrals.step.push_back (area[i] / area.back());
        integrals.ramp.push_back ((t * area[i] - moment[i]) / area.back());
    }
    return integrals;
}

} // namespace

StepKernel::StepKernel (double sampleRateHz) : taps_ (tapsFor (sampleRateHz)), beta_ (betaFor (taps_, sampleRateHz))
{
    const Integrals integrals = integrate (taps_, beta_);
    const auto taps = static_cast<std::size_t> (taps_);
    constexpr auto rows = static_cast<std::size_t> (phases);

    const auto residual = [&] (std::size_t row, std::size_t tap, bool ramp)
    {
        const std::size_t i = (1 + tap) * rows - row;
        const double t = static_cast<double> (i) / phases - 0.5 * taps_;
        const bool past = tap >= taps / 2;
        return ramp ? integrals.ramp[i] - (past ? t : 0.0) : integrals.step[i] - (past ? 1.0 : 0.0);
    };

    for (std::size_t row = 0; row < rows; ++row)
        for (const bool isRamp : { false, true })
        {
            auto& table = isRamp ? ramp_ : step_;
            for (std::size_t tap = 0; tap < taps; ++tap)
                table.push_back (static_cast<float> (residual (row, tap, isRamp)));
            for (std::size_t tap = 0; tap < taps; ++tap)
                table.push_back (static_cast<float> (residual (row + 1, tap, isRamp) - residual (row, tap, isRamp)));
        }
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/KaiserLowpass.h"

#include <cmath>
#include <numbers>
#include <numeric>

namespace stopwright
{

namespace
{

/// Modified Bessel function of order 0 by its power series, sum ((x/2)^k / k!)^2.
double besselI0 (double x)
{
    double term = 1.0;
    double sum = 1.0;
    for (int k = 1; term > 1e-17 * sum; ++k)
    {
        const double factor = 0.5 * x / k;
        term *= factor * factor;
        sum += term;
    }
    return sum;
}

int halfLength (const LowpassTask& task)
{
    const double transition = 2.0 * std::numbers::pi * (task.stopEdge - task.passEdge);
    const double length = (task.attenuationDb - 7.95) / (2.285 * transition);
    const int multiple = task.halfLengthMultiple;
    return multiple * static_cast<int> (std::ceil (0.5 * length / multiple));
}

} // namespace

std::vector<double> kaiserLowpass (const LowpassTask& task)
{
    const int half = halfLength (task);
    const double beta = 0.1102 * (task.attenuationDb - 8.7);
    const double cutoff = 0.5 * (task.passEdge + task.stopEdge);

    std::vector<double> coefficients;
    coefficients.reserve (2 * static_cast<std::size_t> (half) + 1);
    for (int n = -half; n <= half; ++n)
    {
        const double place = static_cast<double> (n) / half;
        const double window = besselI0 (beta * std::sqrt (1.0 - place * place)) / besselI0 (beta);
        const double angle = 2.0 * std::numbers::pi * cutoff * n;
        coefficients.push_back (n == 0 ? window : window * std::sin (angle) / angle);
    }

    const double sum = std::accumulate (coefficients.begin(), coefficients.end(), 0.0);
    for (double& coefficient : coefficients)
        coefficient /= sum;
    return coefficients;
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/FourierSeries.h"

#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

constexpr double pi = std::numbers::pi;

/// exp (-2 pi i n phase), with the whole turns taken off first so that high harmonics keep their digits.
Complex turnedBack (int n, double phase) noexcept
{
    const double turns = static_cast<double> (n) * phase;
    return std::polar (1.0, -2.0 * pi * (turns - std::floor (turns)));
}

/// sin (pi n duty), exactly zero where n duty is a whole number to the last digit.
double pulseSine (int n, double duty) noexcept
{
    const double halfTurns = static_cast<double> (n) * duty;
    const double whole = std::round (halfTurns);
    const double sine = std::sin (pi * (halfTurns - whole));
    return std::fmod (whole, 2.0) == 0.0 ? sine : -sine;
}

/// High from 0 to duty: c = (2 / (pi n)) sin (pi n d) i exp (-i pi n d). Source: any table of Fourier series.
Complex pulse (int n, double duty) noexcept
{
    return 2.0 / (pi * n) * pulseSine (n, duty) * Complex (0.0, 1.0) * turnedBack (n, 0.5 * duty);
}

/// 2 / (pi n) for odd n. Source: any table of Fourier series.
double square (int n) noexcept
{
    return n % 2 == 0 ? 0.0 : 2.0 / (pi * n);
}

double sawtooth (int n) noexcept
{
    return 1.0 / (pi * n);
}

/// From its lowest point upward: -(4 / (pi n)^2) cos for odd n. Source: any table of Fourier series.
Complex triangle (int n) noexcept
{
    return n % 2 == 0 ? Complex() : Complex (0.0, -4.0 / (pi * pi * n * n));
}

/// Harmonic n of a rank that runs 2^octaves times as fast.
double rank (int n, int octaves) noexcept
{
    const int divider = 1 << octaves;
    return n % divider == 0 ? square (n / divider) : 0.0;
}

/// The peak to peak value of the plain difference is the greater of w and 1 - w: it is scaled to 1.
double outphased (int n, double weight) noexcept
{
    const double octave = n % 2 == 0 ? sawtooth (n / 2) : 0.0;
    return (sawtooth (n) - weight * octave) / std::fmax (weight, 1.0 - weight);
}

/// Steady state of +-1/2 approached with time constants r and f (in periods): the square less A exp (-t/r) in the first
/// half, plus B exp (-(t - 1/2)/f) in the second. Continuity at both ends gives A and B; each piece is integrated
/// against exp (-2 pi i n t) in closed form. Source: the Fourier integral, worked by hand.
Complex rounded (int n, double riseTau, double fallTau) noexcept
{
    const double riseLoss = -std::expm1 (-0.5 / riseTau); // 1 - exp (-1/(2 r))
    const double fallLoss = -std::expm1 (-0.5 / fallTau);
    const double whole = riseLoss + fallLoss - riseLoss * fallLoss;
    const double riseSize = fallLoss / whole;
    const double fallSize = riseLoss / whole;
    const double sign = n % 2 == 0 ? 1.0 : -1.0;

    const Complex rise = (1.0 - sign * (1.0 - riseLoss)) / Complex (1.0 / riseTau, 2.0 * pi * n);
    const Complex fall = (1.0 - sign * (1.0 - fallLoss)) / Complex (1.0 / fallTau, 2.0 * pi * n);
    return square (n) + Complex (0.0, 2.0) * (sign * fallSize * fall - riseSize * rise);
}

Complex roundedOf (const Wave& wave, int n, double fundamentalHz) noexcept
{
    const double periods = wave.tauUnit == TauUnit::seconds ? fundamentalHz : 1.0;
    return rounded (n, wave.riseTau * periods, wave.fallTau * periods);
}

} // namespace

std::complex<double> fourierCoefficient (const Wave& wave, int n, double fundamentalHz) noexcept
{
    if (n < 1)
        return {};

    switch (wave.kind)
    {
        case WaveKind::square:
        case WaveKind::pulse:
            return pulse (n, wave.duty);
        case WaveKind::rounded:
            return roundedOf (wave, n, fundamentalHz);
        case WaveKind::triangle:
            return triangle (n);
        case WaveKind::sawtooth:
            return sawtooth (n);
        case WaveKind::outphased:
            return outphased (n, wave.outphaseWeight);
        case WaveKind::staircase:
            break;
    }

    double sum = 0.0;
    for (int j = 0; j < wave.ranks; ++j)
        sum += wave.rankWeight (j) * rank (n, j);

    return sum;
}

std::complex<double> fourierCoefficient (const Wave& wave, int n, Generator generator, const Tuning& tuning) noexcept
{
    if (wave.kind != WaveKind::staircase || n < 1)
        return fourierCoefficient (wave, n, tuning.frequencyHz (generator));

    double sum = 0.0;
    for (int j = 0; j < wave.ranks; ++j)
        if (const auto sounding = tuning.octavesAbove (generator, j))
            sum += wave.rankWeight (j) * rank (n, generator.octavesBelowTop - sounding->octavesBelowTop);

    return sum;
}

} // namespace stopwright

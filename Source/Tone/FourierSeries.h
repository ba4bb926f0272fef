// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/Tuning.h"
#include "Tone/Wave.h"

#include <complex>

namespace stopwright
{

/// Exact Fourier coefficient of the unit wave: the part of it at n times its fundamental is |c| sin (2 pi n f t + arg c),
/// with t = 0 where the square of the same generator rises. n >= 1. `fundamentalHz` matters only to a rounded wave with
/// time constants in seconds. A staircase has all its ranks here.
/// Threading: [any]. Source: closed forms, one per wave, beside the code.
std::complex<double> fourierCoefficient (const Wave& wave, int n, double fundamentalHz) noexcept;

/// The same for the wave as a given generator of an instrument makes it: ranks of a staircase above the highest
/// generator are silent or break back as the tuning says.
std::complex<double> fourierCoefficient (const Wave& wave, int n, Generator generator, const Tuning& tuning) noexcept;

} // namespace stopwright

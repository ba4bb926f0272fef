// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/NodalEquations.h"

#include <complex>
#include <vector>

namespace stopwright
{

/// One way a network moves on its own: all its voltages and currents go as exp (frequency * t).
struct NaturalMode
{
    std::complex<double> frequency;             ///< rad/s; the real part is the growth rate
    std::vector<std::complex<double>> solution; ///< z of NodalEquations, largest entry 1
};

/// The finite natural frequencies of (G + s E) z = 0 and their modes, in ascending magnitude, pairs adjacent with the
/// positive imaginary part first.
///
/// With E = P D Q^T (one column per energy store) the eigenvalues m of D^1/2 Q^T (G + s0 E)^-1 P D^1/2 are 1/(s0 - s);
/// stores that depend on others give m = 0. The work is done in extended precision. Frequencies above 1e14 rad/s are
/// not told from instantaneous ones and are left out, those below 1e-9 rad/s are given as 0; an n-fold frequency is
/// good to about 1e-18^(1/n) relative only.
/// Threading: [control]. Needs equations that are not singular for every s.
std::vector<NaturalMode> naturalModes (const NodalEquations& equations);

} // namespace stopwright

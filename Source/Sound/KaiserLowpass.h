// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace stopwright
{

/// What a windowed low-pass has to do. Frequencies in cycles per sample, 0 < passEdge < stopEdge < 0.5 or beyond.
struct LowpassTask
{
    double passEdge = 0.1;
    double stopEdge = 0.2;
    double attenuationDb = 100.0; ///< > 50; the passband ripple comes out as small as the stopband
    int halfLengthMultiple = 1;   ///< the delay in samples is made a multiple of this
};

/// Linear-phase low-pass: 2 M + 1 coefficients, symmetrical, unity at 0 Hz. h[n] = sinc (2 fc n) w[n], fc half way
/// between the edges, w the Kaiser window of beta = 0.1102 (A - 8.7), 2 M >= (A - 7.95) / (2.285 dw).
/// Threading: [control]
/// Source: Oppenheim & Schafer, Discrete-Time Signal Processing, "Kaiser window" design formulas (after Kaiser 1974)
std::vector<double> kaiserLowpass (const LowpassTask& task);

} // namespace stopwright

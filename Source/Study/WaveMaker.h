// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/FourierTransform.h"

#include <complex>
#include <map>
#include <span>
#include <vector>

namespace stopwright
{

/// Makes waves out of the spectra of a LockedGroup. Threading: [control], one thread at a time.
class WaveMaker
{
public:
    /// The sum of |c_k| sin (2 pi k t + arg c_k) over one period, in `2 spectrum.size()` points. The size is a power of two
    /// from 2 on; c_0 is not used.
    ///
    /// The partials are weighed by exp (-12 (k / size)^2), which rounds every edge as a Gaussian of 0.78 / size of a period
    /// would: cut off sharply, they would overshoot each edge by 9 % of its height (Gibbs' phenomenon), as no circuit does.
    std::vector<double> waveOf (std::span<const std::complex<double>> spectrum);

private:
    std::map<std::size_t, FourierTransform> transforms_;
};

} // namespace stopwright

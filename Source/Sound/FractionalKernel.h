// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

namespace stopwright
{

/// Reads samples at any place between them: a windowed sinc for each of 256 places from one sample to the next, and a
/// straight line between neighbouring ones.
///
/// Flat to 20 kHz (at device rates below 44.1 kHz to 0.4535 of the rate) and images of what lies there at least 90 dB
/// down; a steady value comes out as it is.
/// Threading: construct on [control]; read on [audio] or [any], it does not change.
/// Source: Laakso, Valimaki, Karjalainen & Laine, Splitting the unit delay, IEEE Signal Processing Magazine 13 (1996) 30
/// (from memory); KaiserLowpass
class FractionalKernel
{
public:
    explicit FractionalKernel (double rateHz);

    /// Samples it looks at to either side of the place.
    int reach() const noexcept { return reach_; }

    /// The value `fraction` (0 <= fraction < 1) before window[reach()]; looks at window[0 .. 2 reach() - 1], oldest first.
    double read (const double* window, double fraction) const noexcept;

private:
    int reach_ = 0;
    std::size_t taps_ = 0;
    std::vector<double> weights_; ///< [places + 1][taps_]
};

} // namespace stopwright

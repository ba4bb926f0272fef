// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <span>

namespace stopwright
{

/// A wave divided in two at one frequency, 24 dB per octave either way: each half is a second-order Butterworth filter
/// twice over, -6.02 dB at the crossing, and both add to an all-pass (1 - sqrt2 s + s^2) / (1 + sqrt2 s + s^2), level at
/// every frequency. By the bilinear step, prewarped so that the crossing lies where it is asked for.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
/// Source: S. H. Linkwitz, Active crossover networks for noncoincident drivers, J. Audio Eng. Soc. 24 (1976) 2; the
/// filter form after A. Simper's trapezoidal state variable filter (both from memory)
class Crossover
{
public:
    /// Units/range: 0 < crossingHz < 0.45 rateHz. Fails: Error when it lies outside.
    Crossover (double crossingHz, double rateHz);

    /// in.size() == low.size() == high.size(); either may be the same memory as in.
    void process (std::span<const double> in, std::span<double> low, std::span<double> high) noexcept;

    void reset() noexcept;

    void copyStateFrom (const Crossover& other) noexcept { sections_ = other.sections_; }

private:
    /// Two integrators; gives low-pass and high-pass at once.
    struct Section
    {
        double first = 0.0;
        double second = 0.0;
    };

    struct Halves
    {
        double low;
        double high;
    };

    Halves run (Section& section, double in) const noexcept;

    double tangent_; ///< of half the crossing's angle
    double scale_;
    std::array<Section, 3> sections_ {}; ///< both halves, low again, high again
};

} // namespace stopwright

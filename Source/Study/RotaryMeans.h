// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Outlet.h"
#include "Study/RotorSight.h"

#include <array>
#include <complex>
#include <cstddef>

namespace stopwright
{

/// What a rotary speaker makes of a lasting tone, averaged over all places of horn and drum, which do not keep step with
/// each other; so its speed does not matter.
///
/// With the crossover's halves L and H (second-order Butterworth twice over) and what each rotor does at one angle,
/// d = gain e^(-j w (way - way of the axis) / c), the mean gain is L mean d + H mean h, what stays in step with the sound
/// that went in; and the mean power |L|^2 mean |d|^2 + |H|^2 mean |h|^2 + 2 Re (L conj (H) mean d conj (mean h)).
/// Threading: [control].
class RotaryMeans
{
public:
    explicit RotaryMeans (const RotarySettings& settings) noexcept;

    /// Range of both: frequencyHz > 0, up to 20 kHz.
    std::complex<double> gain (double frequencyHz) const noexcept;

    /// Power out re power in; not below |gain|^2.
    double power (double frequencyHz) const noexcept;

private:
    class Rotor
    {
    public:
        Rotor (double radiusMetres, const RotorPlace& place) noexcept;

        double meanPower() const noexcept { return meanPower_; }

        std::complex<double> mean (double frequencyHz) const noexcept;

    private:
        static constexpr std::size_t angleCount = 64;
        double radiusMetres_;
        double axisMetres_;
        std::array<RotorSight, angleCount> sights_ {};
        double meanPower_ = 0.0;
    };

    struct Halves
    {
        std::complex<double> low;
        std::complex<double> high;
    };

    Halves halves (double frequencyHz) const noexcept;

    double crossoverHz_;
    Rotor horn_;
    Rotor drum_;
};

} // namespace stopwright

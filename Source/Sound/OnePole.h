// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

namespace stopwright
{

/// A resistance and a capacitor, run by the Cayley step with the capacitor's volts as the state: v' = w (u - v), so
/// v[n+1] = ((1 - a) v[n] + a (u[n] + u[n+1])) / (1 + a), a = w h / 2, w = 2 pi cornerHz. Across the capacitor it is a
/// low-pass, across the resistance a high-pass; H_digital (w) = H_analogue (j 2 fs tan (w / 2)) for both.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
/// Source: design of this project, LinearCircuit; the step after Hairer & Wanner, Solving Ordinary Differential
/// Equations II, IV.12 (from memory)
class OnePole
{
public:
    /// Units/range: cornerHz > 0, rateHz > 0.
    OnePole (double cornerHz, double rateHz);

    /// In place: volts across the capacitor.
    void lowpass (std::span<double> volts) noexcept;

    /// In place: volts across the resistance.
    void highpass (std::span<double> volts) noexcept;

    /// Capacitor empty, nothing at the input.
    void reset() noexcept;

    /// Takes over the charge; the corners may differ.
    void copyStateFrom (const OnePole& other) noexcept;

private:
    template <typename Take>
    void run (std::span<double> volts, Take take) noexcept;

    double keep_;
    double feed_;
    double charge_ = 0.0; ///< volts
    double lastInput_ = 0.0;
};

} // namespace stopwright

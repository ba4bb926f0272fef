// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>
#include <functional>
#include <optional>

namespace stopwright
{

/// What a probe, a cable or an input puts across the place it is connected to: a resistance and a capacitance in parallel.
struct ProbeLoad
{
    double ohms = 10e6;
    double farads = 15e-12;

    bool operator== (const ProbeLoad&) const = default;

    std::complex<double> siemens (double frequencyHz) const noexcept;

    /// Ratio of the volts with the load to those without, 1 / (1 + Z Y). Threading: [any]. Source: Thevenin's theorem.
    std::complex<double> ratio (std::complex<double> nodeOhms, double frequencyHz) const noexcept;
};

/// Where the ratio is 3.01 dB below what it is at 20 Hz, first from below; nothing up to 10 MHz when it never is. Of a
/// resistive node it is 1 / (2 pi C (R || Rnode)). Threading: [control].
std::optional<double> cornerOf (const ProbeLoad& load,
                                const std::function<std::complex<double> (double frequencyHz)>& nodeOhms);

} // namespace stopwright

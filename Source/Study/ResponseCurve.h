// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>
#include <functional>
#include <span>
#include <vector>

namespace stopwright
{

/// A response that is asked for far above hearing, where waves have their edges: exact up to 20 kHz, and above between
/// values at 48 frequencies an octave, along straight lines over the logarithm of frequency. Beyond 20 MHz it stays what
/// it is there. A one-pole response is good to 3e-5 of its largest value between the frequencies.
/// Threading: [control], one thread at a time.
class ResponseCurve
{
public:
    using Response = std::function<std::complex<double> (double frequencyHz)>;

    /// What `exact` refers to must outlive the curve.
    explicit ResponseCurve (Response exact);

    /// bins[k] = response at k baseHz for k = 1 .. ; bins[0] = 0. Range: baseHz > 0.
    void fill (double baseHz, std::span<std::complex<double>> bins) const;

private:
    std::complex<double> above (double frequencyHz) const noexcept;

    Response exact_;
    std::vector<std::complex<double>> kept_; ///< from 20 kHz up
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace stopwright
{

/// The band-limited step and ramp of one sample rate, as what they differ by from the ideal ones.
///
/// h (t) = sinc (t) kaiser (t), cut off at half the rate, t in samples, over T taps; step = integral of h, ramp = integral
/// of step. Tables hold step (t) - [t > 0] and ramp (t) - max (t, 0) at `phases` places between two samples, each row
/// with its difference to the next for linear interpolation. Row r, tap k stands at t = 1 + k - T/2 - r / phases, and
/// the ideal edge counts as past from tap T/2 on, also in the limit rows.
/// The length follows from a stop band 141 dB down that begins at rate - 20 kHz with 20 kHz untouched: 16 taps from
/// 96 kHz, 56 at 48 kHz, 104 at 44.1 kHz.
/// Threading: construct on [control], immutable.
/// Source: Brandt 2001 (hard sync without aliasing) for the step table; Kaiser 1974 for length and beta.
class StepKernel
{
public:
    static constexpr int phases = 512;
    static constexpr int mostTaps = 128;

    explicit StepKernel (double sampleRateHz);

    int taps() const noexcept { return taps_; }

    /// Half the length: by how much everything comes out late.
    int delayFrames() const noexcept { return taps_ / 2; }

    double beta() const noexcept { return beta_; }

    /// Rows of `taps` values followed by `taps` differences to the next row, `phases` of them.
    const float* stepRows() const noexcept { return step_.data(); }

    const float* rampRows() const noexcept { return ramp_.data(); }

private:
    int taps_ = 0;
    double beta_ = 0.0;
    std::vector<float> step_;
    std::vector<float> ramp_;
};

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// Pulls down slowly what stays loud: a gain that follows the running rms of what comes in, so that the product stays
/// at or below the ceiling in the long run. Feed-forward, thus it cannot hunt.
///
/// The rms runs over 400 ms (exponential); the gain falls by at most 20 dB and rises by at most 3 dB a second. No
/// program can know the sound pressure; this bounds the dose a fixed volume control can give.
/// Units/range: samples re full scale. Threading: construct on [control]; noexcept functions on [audio].
/// Source: the ceiling lies 2 dB under the -10 dBFS programme level of IEC 62368-1, 10.6 (from memory)
class LoudnessCeiling
{
public:
    static constexpr double ceilingDb = -12.0;

    explicit LoudnessCeiling (double rateHz);

    /// Takes one sample, gives the gain (0 .. 1) it should have. Threading: [audio].
    double gainFor (double sample) noexcept;

    void reset() noexcept;

private:
    double forget_;
    double fall_;
    double rise_;
    double ceilingSquare_;
    double meanSquare_ = 0.0;
    double gain_ = 1.0;
};

} // namespace stopwright

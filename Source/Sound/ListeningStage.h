// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/LoudnessCeiling.h"
#include "Sound/SlidingMinimum.h"

#include <cstddef>
#include <span>
#include <vector>

namespace stopwright
{

/// The last thing before the ears: level, fade, loudness ceiling and peak limiter as one gain, and silence on a fault.
///
/// In comes the card re its reference (1 = the rms of its reference key), out come samples of the device. The gain of a
/// sample is the least of what the level asks for and of what keeps every sample within look-ahead under the ceiling,
/// averaged over the look-ahead; it never rises by more than 6 dB in 20 ms (from silence it starts 60 dB below its
/// aim), whatever caused it to be low. So the peak bound holds by construction and not by tuning.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class ListeningStage
{
public:
    static constexpr double ceilingDb = -3.0;
    static constexpr double lookAheadSeconds = 0.002;
    static constexpr double highestRiseDbPerSecond = 300.0; ///< 6 dB in 20 ms

    ListeningStage (double rateHz, double levelDb);

    /// Where the level runs to, in either direction as fast as the gain may rise. Units/range: dB re full scale.
    void setLevelDb (double levelDb) noexcept;

    /// in.size() == out.size(), any length. A sample that is not finite, or is beyond 1e12, acts as silence().
    void process (std::span<const double> in, std::span<float> out) noexcept;

    /// Nothing but zeros from this sample on, what was in the look-ahead included, until resume().
    void silence() noexcept;

    /// Ends silence() with a fade of 200 ms. Harmless when there was none.
    void resume() noexcept;

    bool isSilenced() const noexcept { return isSilenced_; }

    /// How far limiter and loudness ceiling together stood below the level, dB >= 0: most since the last call.
    double takeReductionDb() noexcept;

    double latencySeconds() const noexcept;

    /// As after construction: level kept, faded out.
    void reset() noexcept;

private:
    double gainFor (double sample) noexcept;
    double averaged (double gain) noexcept;
    void clearMemory() noexcept;

    double rateHz_;
    double rise_;    ///< per sample, of any gain
    double release_; ///< per sample, of the limiter
    float ceiling_;
    double level_; ///< where the ramp stands
    double levelTarget_;
    double limit_ = 1.0; ///< the limiter's share, 0 .. 1
    double gain_ = 0.0;  ///< before the average
    double lowestShare_ = 1.0;
    bool isSilenced_ = false;
    LoudnessCeiling loudness_;
    SlidingMinimum minimum_;
    std::size_t place_ = 0; ///< in the two rings
    std::vector<double> delayed_;
    std::vector<double> gains_;
    double gainSum_ = 0.0;
};

} // namespace stopwright

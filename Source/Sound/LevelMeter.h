// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

namespace stopwright
{

/// Short-term rms (exponential, 100 ms) and peak of what goes to the device. Threading: [audio]
class LevelMeter
{
public:
    static constexpr double windowSeconds = 0.1;
    static constexpr double lowestDb = -200.0;

    explicit LevelMeter (double rateHz);

    void process (std::span<const float> samples) noexcept;
    double rmsDb() const noexcept;

    /// The highest since the last call.
    double takePeak() noexcept;

private:
    double forget_;
    double meanSquare_ = 0.0;
    double peak_ = 0.0;
};

} // namespace stopwright

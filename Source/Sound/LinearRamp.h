// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

namespace stopwright
{

/// A gain that runs in a straight line to where it is sent, over a fixed time.
/// Threading: construct on [control]; noexcept functions on [audio].
class LinearRamp
{
public:
    LinearRamp (double value, double rampSeconds, double rateHz);

    void setTarget (double target) noexcept;

    /// out = in * gain, sample by sample. in.size() == out.size().
    void apply (std::span<const float> in, std::span<double> out) noexcept;
    void apply (std::span<const double> in, std::span<double> out) noexcept;

    double target() const noexcept { return target_; }

    bool isMoving() const noexcept { return framesLeft_ > 0; }

    /// At its target at once.
    void finish() noexcept;

private:
    template <typename Sample>
    void applyTo (std::span<const Sample> in, std::span<double> out) noexcept;

    double value_;
    double target_;
    double step_ = 0.0;
    int rampFrames_;
    int framesLeft_ = 0;
};

} // namespace stopwright

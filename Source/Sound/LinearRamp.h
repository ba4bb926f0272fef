// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
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

    /// The same of a block whose length the compiler knows.
    template <std::size_t length>
    void apply (std::span<const double, length> in, std::span<double, length> out) noexcept
    {
        if (isMoving())
        {
            apply (std::span<const double> (in), std::span<double> (out));
            return;
        }
        // A copy, since `out` might lie over the gain for all that the compiler knows.
        const double gain = value_;
        const double* const from = in.data();
        double* const __restrict to = out.data();
        for (std::size_t frame = 0; frame < length; ++frame)
            to[frame] = gain * from[frame];
    }

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

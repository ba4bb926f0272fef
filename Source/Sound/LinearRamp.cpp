// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/LinearRamp.h"

#include "Units/WideVector.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stopwright
{

namespace
{

STOPWRIGHT_WIDE
void scale (const float* in, double gain, double* out, std::size_t count) noexcept
{
    for (std::size_t frame = 0; frame < count; ++frame)
        out[frame] = gain * static_cast<double> (in[frame]);
}

STOPWRIGHT_WIDE
void scale (const double* in, double gain, double* out, std::size_t count) noexcept
{
    for (std::size_t frame = 0; frame < count; ++frame)
        out[frame] = gain * in[frame];
}

} // namespace

LinearRamp::LinearRamp (double value, double rampSeconds, double rateHz)
    : value_ (value),
      target_ (value),
      rampFrames_ (std::max (1, static_cast<int> (std::round (rampSeconds * rateHz))))
{}

void LinearRamp::setTarget (double target) noexcept
{
    if (target == target_)
        return;
    target_ = target;
    step_ = (target - value_) / rampFrames_;
    framesLeft_ = rampFrames_;
}

template <typename Sample>
void LinearRamp::applyTo (std::span<const Sample> in, std::span<double> out) noexcept
{
    std::size_t frame = 0;
    for (; frame < in.size() && framesLeft_ > 0; ++frame)
    {
        value_ = --framesLeft_ == 0 ? target_ : value_ + step_;
        out[frame] = value_ * static_cast<double> (in[frame]);
    }
    scale (in.data() + frame, value_, out.data() + frame, in.size() - frame);
}

void LinearRamp::apply (std::span<const float> in, std::span<double> out) noexcept
{
    applyTo (in, out);
}

void LinearRamp::apply (std::span<const double> in, std::span<double> out) noexcept
{
    applyTo (in, out);
}

void LinearRamp::finish() noexcept
{
    value_ = target_;
    framesLeft_ = 0;
}

} // namespace stopwright

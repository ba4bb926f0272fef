// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/KeyGate.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr double arrived = 1.0e-8; // of the whole way: -160 dB

} // namespace

void KeyGate::post (bool down, int frame) noexcept
{
    if (down == down_)
        return;

    down_ = down;
    if (waiting_ == mostEvents)
    {
        --waiting_;
        return;
    }

    const int earliest = waiting_ > 0 ? events_[static_cast<std::size_t> (waiting_ - 1)].frame : 0;
    events_[static_cast<std::size_t> (waiting_)] = { std::max (frame, earliest), down };
    ++waiting_;
}

KeyGate::Event KeyGate::takeEvent() noexcept
{
    const Event first = events_[0];
    std::copy (events_.begin() + 1, events_.end(), events_.begin());
    --waiting_;
    return first;
}

void KeyGate::moveEventsBy (int frames) noexcept
{
    for (int i = 0; i < waiting_; ++i)
        events_[static_cast<std::size_t> (i)].frame -= frames;
}

void KeyGate::begin (bool open, const GateShape& shape) noexcept
{
    target_ = open ? 1.0 : 0.0;
    from_ = openness_;
    elapsedFrames_ = 0.0;
    wholeFrames_ = std::max (shape.fewestFrames(), shape.wayFrames (open) * std::abs (target_ - from_));
    moving_ = shape.kind() != KeyerShape::contact;

    if (! moving_)
        openness_ = target_;
}

void KeyGate::run (const GateShape& shape, float* openness, int count) noexcept
{
    if (! moving_)
        std::fill_n (openness, count, static_cast<float> (openness_));
    else if (shape.kind() == KeyerShape::rc)
        runRc (shape, openness, count);
    else
        runLine (shape, openness, count);
}

void KeyGate::runLine (const GateShape& shape, float* openness, int count) noexcept
{
    const double perFrame = 1.0 / wholeFrames_;
    for (int i = 0; i < count; ++i)
        openness[i] =
            static_cast<float> (from_ + (target_ - from_) * shape.travelled ((elapsedFrames_ + i + 1) * perFrame));

    elapsedFrames_ += count;
    moving_ = elapsedFrames_ < wholeFrames_;
    openness_ = moving_ ? from_ + (target_ - from_) * shape.travelled (elapsedFrames_ * perFrame) : target_;
}

void KeyGate::runRc (const GateShape& shape, float* openness, int count) noexcept
{
    const auto& left = shape.remaining (target_ > 0.5);
    const double way = openness_ - target_;
    for (int i = 0; i < count; ++i)
        openness[i] = static_cast<float> (target_ + way * left[static_cast<std::size_t> (i)]);

    openness_ = target_ + way * left[static_cast<std::size_t> (count - 1)];
    if (std::abs (openness_ - target_) < arrived)
    {
        openness_ = target_;
        moving_ = false;
    }
}

} // namespace stopwright

// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/OutletMix.h"

#include <algorithm>

namespace stopwright
{

OutletMix::OutletMix (const Outlet& outlet,
                      double deviceRateHz,
                      int factor,
                      int maxDeviceFrames,
                      int lead,
                      int mostSurplus)
    : decimator_ (deviceRateHz, factor, maxDeviceFrames),
      stage_ (outlet, deviceRateHz),
      lead_ (static_cast<std::size_t> (lead)),
      waiting_ (static_cast<std::size_t> (lead + mostSurplus + factor * maxDeviceFrames)),
      ready_ (lead_),
      device_ (static_cast<std::size_t> (maxDeviceFrames))
{}

void OutletMix::add (std::span<const double> volts, int offset) noexcept
{
    double* const place = waiting_.data() + ready_ + offset;
    for (std::size_t frame = 0; frame < volts.size(); ++frame)
        place[frame] += volts[frame];
}

void OutletMix::advance (int frames) noexcept
{
    ready_ += static_cast<std::size_t> (frames);
}

void OutletMix::renderInto (std::span<double> out) noexcept
{
    const auto taken = out.size() * static_cast<std::size_t> (decimator_.factor());
    const auto device = std::span (device_).first (out.size());
    decimator_.process (std::span (waiting_).first (taken), device);
    std::copy (waiting_.begin() + static_cast<std::ptrdiff_t> (taken), waiting_.end(), waiting_.begin());
    std::fill (waiting_.end() - static_cast<std::ptrdiff_t> (taken), waiting_.end(), 0.0);
    ready_ -= taken;

    stage_.process (device);
    for (std::size_t frame = 0; frame < out.size(); ++frame)
        out[frame] += device[frame];
}

bool OutletMix::isLike (const OutletMix& other) const noexcept
{
    return decimator_.isLike (other.decimator_) && stage_.isLike (other.stage_) && lead_ == other.lead_
           && waiting_.size() == other.waiting_.size();
}

void OutletMix::copyStateFrom (const OutletMix& other) noexcept
{
    decimator_.copyStateFrom (other.decimator_);
    stage_.copyStateFrom (other.stage_);
    std::ranges::copy (other.waiting_, waiting_.begin());
    ready_ = other.ready_;
}

} // namespace stopwright

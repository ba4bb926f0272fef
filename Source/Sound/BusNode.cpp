// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/BusNode.h"

#include <numbers>

namespace stopwright
{

BusNode::BusNode (const MixingBus& bus, double sampleRateHz)
    : isVirtualEarth_ (bus.kind == BusKind::virtualEarth),
      isIdealEarth_ (isVirtualEarth_ && ! bus.gainBandwidthHz),
      siemens_ (1.0 / (isVirtualEarth_ ? bus.feedbackOhms : bus.loadOhms)),
      capacitorSiemens_ (isVirtualEarth_ ? 0.0 : 2.0 * bus.loadFarads * sampleRateHz),
      answers_ (length, length, 1)
{
    if (isVirtualEarth_ && bus.gainBandwidthHz)
        drop_ = std::numbers::pi * *bus.gainBandwidthHz / sampleRateHz;
}

// What a bus remembers is one number, amps at zero volts: with m for rememberedAmps before a sample,
//   passive: m' = 4 C / h p - m,  virtual earth: m' = m - 2 drop_ / Rf p.
// So a block's volts are a product of its amps and the m it begins with, and nothing waits for the sample before.
void BusNode::stand (const Stops& stops) noexcept
{
    if (isIdealEarth_)
        return;
    const auto ofAmps = answer (stops, 1.0, 0.0);
    const auto ofRemembered = answer (stops, 0.0, 1.0);
    for (int sample = 0; sample < length; ++sample)
    {
        for (int later = sample; later < length; ++later)
            answers_.set (later, sample, ofAmps[static_cast<std::size_t> (later - sample)]);
        answers_.set (sample, length, ofRemembered[static_cast<std::size_t> (sample)]);
    }
}

/// p of a block that begins with these amps in its first sample, and with these remembered.
BusNode::Samples BusNode::answer (const Stops& stops, double amps, double remembered) const noexcept
{
    const double ohms = 1.0 / wholeSiemens (stops);
    Samples volts {};
    for (std::size_t sample = 0; sample < volts.size(); ++sample)
    {
        double whole = remembered + (sample == 0 ? amps : 0.0);
        for (std::size_t earlier = 0; earlier < sample; ++earlier)
            whole += stops.kernel[sample - earlier] * volts[earlier];
        volts[sample] = ohms * whole;
        remembered = isVirtualEarth_ ? remembered - 2.0 * siemens_ * drop_ * volts[sample]
                                     : 2.0 * capacitorSiemens_ * volts[sample] - remembered;
    }
    return volts;
}

void BusNode::solve (const Samples& amps, Samples& busVolts, Samples& out) noexcept
{
    if (isIdealEarth_)
    {
        busVolts.fill (0.0);
        for (std::size_t sample = 0; sample < out.size(); ++sample)
            out[sample] = -amps[sample] / siemens_;
        out_ = out.back();
        return;
    }
    const double remembered = rememberedAmps();
    answers_.multiply (amps.data(), &remembered, busVolts.data());
    for (std::size_t sample = 0; sample < out.size(); ++sample)
        out[sample] = moveOn (busVolts[sample]);
}

double BusNode::settle (const Instant& instant) noexcept
{
    if (isIdealEarth_)
        return 0.0;
    const double whole = instant.siemens - instant.kernel + siemens_;
    if (capacitorSiemens_ > 0.0)
        capacitorAmps_ = instant.amps - whole * volts_;
    else
        volts_ = (instant.amps + siemens_ * out_) / whole;
    return volts_;
}

void BusNode::adopt (const BusNode& other) noexcept
{
    volts_ = other.volts_;
    capacitorAmps_ = other.capacitorAmps_;
    out_ = other.out_;
}

} // namespace stopwright

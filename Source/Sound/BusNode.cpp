// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/BusNode.h"

#include <numbers>

namespace stopwright
{

BusNode::BusNode (const MixingBus& bus, double sampleRateHz)
    : isVirtualEarth_ (bus.kind == BusKind::virtualEarth),
      isIdealEarth_ (isVirtualEarth_ && ! bus.gainBandwidthHz),
      siemens_ (1.0 / (isVirtualEarth_ ? bus.feedbackOhms : bus.loadOhms)),
      capacitorSiemens_ (isVirtualEarth_ ? 0.0 : 2.0 * bus.loadFarads * sampleRateHz)
{
    if (isVirtualEarth_ && bus.gainBandwidthHz)
        drop_ = std::numbers::pi * *bus.gainBandwidthHz / sampleRateHz;
}

void BusNode::solve (const Stops& stops, Samples& busVolts, Samples& out) noexcept
{
    if (! isIdealEarth_)
    {
        solveBehind (stops, busVolts, out);
        return;
    }
    busVolts.fill (0.0);
    for (int sample = 0; sample < length; ++sample)
    {
        const auto place = static_cast<std::size_t> (sample);
        out[place] = -stops.amps[place] / siemens_;
    }
    out_ = out.back();
}

// drop_ is zero on a passive bus and capacitorSiemens_ at a virtual earth, so one line serves both. What a sample's volts
// do to the samples after it is added at once, for all eight, so that it runs side by side.
void BusNode::solveBehind (const Stops& stops, Samples& busVolts, Samples& out) noexcept
{
    const double ohms = 1.0 / wholeSiemens (stops);
    std::array<double, twoBlocks> amps {};
    std::copy (stops.amps.begin(), stops.amps.end(), amps.begin());
    for (std::size_t sample = 0; sample < busVolts.size(); ++sample)
    {
        const double volts = ohms * (amps[sample] + rememberedAmps());
        for (std::size_t later = 0; later < busVolts.size(); ++later)
            amps[sample + later] += stops.kernel[later] * volts;
        busVolts[sample] = volts;
        out[sample] = moveOn (volts);
    }
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

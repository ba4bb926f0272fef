// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BusOhms.h"

#include <numbers>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

} // namespace

Complex ownSiemens (const MixingBus& bus, double frequencyHz) noexcept
{
    if (bus.kind != BusKind::passive)
        return 0.0;
    return { 1.0 / bus.loadOhms, 2.0 * std::numbers::pi * frequencyHz * bus.loadFarads };
}

// Virtual earth: I - p Y = (p - out) / Rf with out = -A p and A = GBW / (j f).
Complex busOhmsAt (const MixingBus& bus, Complex siemens, double frequencyHz) noexcept
{
    if (bus.kind == BusKind::passive)
        return 1.0 / siemens;
    if (! bus.gainBandwidthHz)
        return -bus.feedbackOhms;
    const Complex amplification { 0.0, -*bus.gainBandwidthHz / frequencyHz };
    return -amplification / (siemens + (1.0 + amplification) / bus.feedbackOhms);
}

bool feels (const MixingBus& bus) noexcept
{
    return bus.kind == BusKind::passive || bus.gainBandwidthHz.has_value();
}

} // namespace stopwright
